import { expect, test } from "vitest";
import { countdown, dayAt, hours, timeOfDay } from "./time";

test("a time is shown by the shop's clock", () => {
  // 1,234,567,890 s is 2009-02-13T23:31:30Z, as GNU date gives it.
  expect(timeOfDay(1_234_567_890_000, 0)).toBe("23:31");
  expect(timeOfDay(1_234_567_890_000, 60)).toBe("00:31");
  expect(timeOfDay(1_234_567_890_000, -570)).toBe("14:01");
});

test("minutes are shown with their hours", () => {
  expect(hours(112)).toBe("1 h 52");
  expect(hours(5)).toBe("0 h 05");
});

test("a countdown shows the second that is running and stops at zero", () => {
  expect(countdown(725_000)).toBe("12:05");
  expect(countdown(1)).toBe("0:01");
  expect(countdown(-500)).toBe("0:00");
});

test("a day is that of this tablet's clock", () => {
  expect(dayAt(new Date("2026-03-02T00:05").getTime())).toBe("2026-03-02");
  expect(dayAt(new Date("2026-03-02T23:55").getTime())).toBe("2026-03-02");
});
