// What a meter or a wrench types as a keyboard: characters faster than any hand, and Enter.

/** Between two keys of an instrument lies no more, in milliseconds. Hands are slower. */
export const GAP_MS = 60;

/** Keys that came one behind the other as fast as an instrument types. */
export class Burst {
  #text = "";
  #last = Number.NEGATIVE_INFINITY;

  /** Takes a key at a time in milliseconds. Answers whether it goes on with what came before. */
  goesOn(key: string, now: number): boolean {
    const isFast = now - this.#last <= GAP_MS;
    // Shift and the like are held while a character is typed.
    if (key !== "Enter" && [...key].length !== 1) return false;
    const goesOn = isFast && this.#text !== "";
    this.#text = goesOn ? this.#text : "";
    if (key !== "Enter") this.#text += key;
    this.#last = now;
    return goesOn;
  }

  /** The text so far; the next one begins anew. */
  take(): string {
    const text = this.#text;
    this.#text = "";
    return text.trim();
  }
}

/** What an instrument shows. */
export interface Shown {
  /** The number as it was sent, or `OL` where there is more than can be measured. */
  number: string;
  /** The unit as it was sent; empty where there was none. */
  unit: string;
}

/** Reads what an instrument sent; nothing where it is no number and no overload. */
export function shownBy(text: string): Shown | null {
  const over = /^[+\-−]?\s*(?:O\.?L\.?|OVLD)(?:\s+(.*)|([^\p{L}\d].*))?$/iu.exec(text);
  if (over) return { number: "OL", unit: (over[1] ?? over[2] ?? "").trim() };
  const number = /^([+\-−]?)\s*(\d+(?:[.,]\d+)*[.,]?|[.,]\d+)\s*(\P{N}.*)?$/u.exec(text);
  if (!number) return null;
  const [, sign = "", digits = "", unit = ""] = number;
  return { number: (sign === "+" ? "" : sign) + digits, unit: unit.trim() };
}

/** How instruments write units that the window writes otherwise, both in their plain form. */
const SPELLINGS: Record<string, string> = {
  ohm: "ω",
  ohms: "ω",
  kohm: "kω",
  kohms: "kω",
  volt: "v",
  volts: "v",
  vdc: "v",
  dcv: "v",
  degc: "c",
  degf: "f",
  deg: "°",
  inch: "in",
  lbft: "lbfft",
  ftlb: "lbfft",
  ftlbs: "lbfft",
  ftlbf: "lbfft",
  lbin: "lbfin",
  inlb: "lbfin",
  inlbs: "lbfin",
  inlbf: "lbfin",
  kgm: "kgfm",
  kgcm: "kgfcm",
};

/** The one of these units that is meant; nothing where it is none of them. */
export function unitMeant(sent: string, units: string[]): string | null {
  return units.find((unit) => unit !== "" && plain(unit) === plain(sent)) ?? null;
}

/** A unit without what is written in many ways: size of letters, dots between, signs that look the same. */
function plain(unit: string): string {
  const bare = unit
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s.·⋅*-]/g, "");
  // A degree alone is an angle.
  const letters = bare === "°" ? bare : bare.replace("°", "");
  return SPELLINGS[letters] ?? letters;
}
