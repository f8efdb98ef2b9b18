import { expect, test, vi } from "vitest";

const sent: Uint8Array[] = [];
vi.mock("@tauri-apps/api/core", () => ({ invoke: async (_: string, bytes: Uint8Array) => sent.push(bytes) }));

const { addPhoto, importChecklist, importSheet } = await import("./call");

/** A file of 3 GB that can't be read whole. */
function huge(): Blob {
  const slice = (from: number, to: number) => ({
    arrayBuffer: async () => new ArrayBuffer((to - from) >> 20),
  });
  const whole = () => Promise.reject(new Error("it was read whole"));
  return { size: 3 * 2 ** 30, slice, arrayBuffer: whole } as unknown as Blob;
}

test("no file is read further than anything that is taken in", async () => {
  await addPhoto("j1", huge());
  await importSheet(huge(), "o");
  await importChecklist(huge());
  // The played file has a byte for each MiB that was asked of it.
  expect(sent.map((bytes) => bytes.length)).toEqual([64, 64, 64]);
});
