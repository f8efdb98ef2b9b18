import { expect, test } from "vitest";
import { behind } from "./back";

test("one goes back to where the screen belongs", () => {
  expect(behind("sheet", true)).toBe("setup");
  expect(behind("new_job", true)).toBe("bay");
  expect(behind("record", true)).toBe("job");
});

test("without a job the bay is behind, and behind the job and the bay there is no screen", () => {
  expect(behind("setup", false)).toBe("bay");
  expect(behind("bay", true)).toBeNull();
  expect(behind("job", true)).toBeNull();
});
