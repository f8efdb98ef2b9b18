// What a scene does in a pad, and what the core is played to say of it.
import { press } from "./settled.mjs";

export const entry = (id) => (page) => press(page, page.locator(`[data-row$="/${id}"]`));
export const key = (name) => (page) => press(page, page.getByRole("button", { name, exact: true }));
export const inDialog = (name) => (page) =>
  press(page, page.getByRole("dialog").getByRole("button", { name }).first());
export const type = (text) => (page) => page.keyboard.type(text);
export const says = (text, more = {}) => ({
  preview: { class: "inside", not_yet: false, other: null, said: [{ id: "said", args: {}, text }], ...more },
});
