// The shape of what was kept as a draft and read again.

export function isRecord(found: unknown): found is Record<string, unknown> {
  return typeof found === "object" && found !== null && !Array.isArray(found);
}

/** Whether all of these are texts of it. */
export function hasTexts(found: unknown, ...names: string[]): found is Record<string, unknown> {
  return isRecord(found) && names.every((name) => typeof found[name] === "string");
}
