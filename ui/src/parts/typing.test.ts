import { expect, test } from "vitest";
import { Typing } from "./typing";

test("texts arrive in order, and those that are overtaken are not sent", async () => {
  const sent: string[] = [];
  const answers: string[] = [];
  const open: (() => void)[] = [];
  const send = (text: string) => {
    sent.push(text);
    return new Promise<string>((done) => open.push(() => done(text.toUpperCase())));
  };
  const typing = new Typing(send, (answer) => answers.push(answer));
  for (const text of ["a", "ab", "abc"]) typing.type(text);
  expect(sent).toEqual(["a"]);
  open.shift()?.();
  await new Promise((done) => setTimeout(done));
  expect(sent).toEqual(["a", "abc"]);
  expect(answers).toEqual([]);
  open.shift()?.();
  await typing.settled();
  expect(answers).toEqual(["ABC"]);
});

test("a text that is typed after the others have arrived is sent at once", async () => {
  const answers: number[] = [];
  const typing = new Typing(
    async (text: number) => text * 2,
    (answer) => answers.push(answer),
  );
  typing.type(1);
  await typing.settled();
  typing.type(2);
  await typing.settled();
  expect(answers).toEqual([2, 4]);
});
