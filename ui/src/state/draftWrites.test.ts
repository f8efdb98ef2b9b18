import { expect, test } from "vitest";
import { DraftWrites } from "./draftWrites";

/** A disk on which each write takes until it is let through; what was asked of it stands in `asked`. */
function slowDisk() {
  const disk = new Map<string, string>();
  const asked: { text: string | null; land: () => void; fail: () => void }[] = [];
  const failures: unknown[] = [];
  const writes = new DraftWrites(
    (job, key, text) =>
      new Promise<void>((resolve, reject) => {
        const at = `${job} ${key}`;
        let over = false;
        const land = () => {
          if (over) return;
          over = true;
          if (text === null) disk.delete(at);
          else disk.set(at, text);
          resolve();
        };
        const fail = () => {
          over = true;
          reject("full");
        };
        asked.push({ text, land, fail });
      }),
    (error) => failures.push(error),
  );
  /** Lets every write through that has been asked for, the newest first, until no more is asked. */
  const landAll = async () => {
    for (let done = 0; done < asked.length; ) {
      const batch = asked.slice(done).reverse();
      done = asked.length;
      for (const write of batch) write.land();
      await new Promise((turn) => setTimeout(turn));
    }
  };
  return { disk, asked, failures, writes, landAll };
}

const turn = () => new Promise((done) => setTimeout(done));

test("a slow write of an older text never lands on a newer one", async () => {
  const { disk, writes, landAll } = slowDisk();
  for (const text of ["4", "42", "42,5"]) writes.put("j1", "k", text);
  await landAll();
  expect(disk.get("j1 k")).toBe("42,5");
});

test("a slow write never lands after its text was taken away", async () => {
  const { disk, writes, landAll } = slowDisk();
  writes.put("j1", "k", "4");
  writes.put("j1", "k", null);
  await landAll();
  expect([...disk]).toEqual([]);
});

test("what is typed anew after it was taken away is kept", async () => {
  const { disk, writes, landAll } = slowDisk();
  writes.put("j1", "k", "4");
  writes.put("j1", "k", null);
  writes.put("j1", "k", "5");
  await landAll();
  expect(disk.get("j1 k")).toBe("5");
});

test("only one write of a key is under way, and the first begins at once", async () => {
  const { asked, writes } = slowDisk();
  for (const text of ["1", "2", "3"]) writes.put("j1", "k", text);
  expect(asked.map((one) => one.text)).toEqual(["1"]);
  asked[0]?.land();
  await turn();
  expect(asked.map((one) => one.text)).toEqual(["1", "3"]);
});

test("keys and jobs don't wait for each other", () => {
  const { asked, writes } = slowDisk();
  writes.put("j1", "k", "a");
  writes.put("j1", "l", "b");
  writes.put("j2", "k", "c");
  expect(asked.map((one) => one.text)).toEqual(["a", "b", "c"]);
});

test("a write that fails is told, and the newer text is written all the same", async () => {
  const { disk, asked, failures, writes, landAll } = slowDisk();
  writes.put("j1", "k", "a");
  writes.put("j1", "k", "b");
  asked[0]?.fail();
  await turn();
  await landAll();
  expect([failures, disk.get("j1 k")]).toEqual([["full"], "b"]);
});

test("a job's drafts are written when every one of them is, and known until then", async () => {
  const { asked, writes, landAll } = slowDisk();
  writes.put("j1", "k", "a");
  writes.put("j1", "k", "b");
  writes.put("j1", "l", null);
  writes.put("j2", "k", "c");
  expect(writes.pending("j1")).toEqual([
    ["k", "b"],
    ["l", null],
  ]);
  let written = false;
  const waiting = writes.written("j1").then(() => {
    written = true;
  });
  asked[0]?.land();
  asked[1]?.land();
  await turn();
  expect(written).toBe(false);
  await landAll();
  await waiting;
  expect(writes.pending("j1")).toEqual([]);
});
