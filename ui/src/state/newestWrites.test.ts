import { expect, test } from "vitest";
import { NewestWrites } from "./newestWrites";

/** A disk on which each write takes until it is let through; what was asked of it stands in `asked`. */
function slowDisk() {
  const disk = new Map<string, string>();
  const asked: { text: string | null; land: () => void }[] = [];
  const writes = new NewestWrites<string | null>(
    (key, text) =>
      new Promise<void>((resolve) => {
        const land = () => {
          if (text === null) disk.delete(key);
          else disk.set(key, text);
          resolve();
        };
        asked.push({ text, land });
      }),
  );
  /** Lets every write through that has been asked for, the newest first, until no more is asked. */
  const landAll = async () => {
    for (let done = 0; done < asked.length; ) {
      const batch = asked.slice(done).reverse();
      done = asked.length;
      for (const write of batch) write.land();
      await turn();
    }
  };
  return { disk, asked, writes, landAll };
}

const turn = () => new Promise((done) => setTimeout(done));

test("a slow write of an older text never lands on a newer one", async () => {
  const { disk, writes, landAll } = slowDisk();
  for (const text of ["4", "42", "42,5"]) writes.put("k", text);
  await landAll();
  expect(disk.get("k")).toBe("42,5");
});

test("a slow write never lands after its text was taken away", async () => {
  const { disk, writes, landAll } = slowDisk();
  writes.put("k", "4");
  writes.put("k", null);
  await landAll();
  expect([...disk]).toEqual([]);
});

test("what is typed anew after it was taken away is kept", async () => {
  const { disk, writes, landAll } = slowDisk();
  writes.put("k", "4");
  writes.put("k", null);
  writes.put("k", "5");
  await landAll();
  expect(disk.get("k")).toBe("5");
});

test("only one write of a key is under way, and the first begins at once", async () => {
  const { asked, writes } = slowDisk();
  for (const text of ["1", "2", "3"]) writes.put("k", text);
  expect(asked.map((one) => one.text)).toEqual(["1"]);
  asked[0]?.land();
  await turn();
  expect(asked.map((one) => one.text)).toEqual(["1", "3"]);
});

test("keys don't wait for each other", () => {
  const { asked, writes } = slowDisk();
  writes.put("k", "a");
  writes.put("l", "b");
  expect(asked.map((one) => one.text)).toEqual(["a", "b"]);
});

test("everything is written when every key is, and known until then", async () => {
  const { asked, writes, landAll } = slowDisk();
  writes.put("k", "a");
  writes.put("k", "b");
  writes.put("l", null);
  expect(writes.pending()).toEqual([
    ["k", "b"],
    ["l", null],
  ]);
  let written = false;
  const waiting = writes.written().then(() => {
    written = true;
  });
  asked[0]?.land();
  asked[1]?.land();
  await turn();
  expect(written).toBe(false);
  await landAll();
  await waiting;
  expect(writes.pending()).toEqual([]);
});
