// A photo. It is entered as it is taken.
import { say } from "../../words/say";
import PhotoPad from "../pads/PhotoPad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const photo = kind<"photo", ValueOf<"photo"> | null>({
  pad: PhotoPad,
  empty: () => null,
  fits: (found): found is ValueOf<"photo"> | null => found === null || hasTexts(found, "hash"),
  isBlank: (typed) => typed === null,
  value: (typed) => (typed ? { value: typed } : { missing: "entry-missing-photo" }),
  text: () => say("entry-photo-is-taken"),
  asked: ({ ask: { photo } }) => [photo.of, ...(photo.with_scale ? [say("entry-photo-scale")] : [])],
  isOneTap: (typed, entry) => {
    const entered = entry.value && "photo" in entry.value ? entry.value.photo.hash : null;
    return typed === null || typed.hash === entered;
  },
  picture: (value) => value.hash,
  saysItself: true,
});
