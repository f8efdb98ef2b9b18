// What keys do to a typed number. What was typed stays as typed: whether it is a number is the core's to say.

/** A text that is being typed. */
export interface Typed {
  text: string;
  /** The field was just come to: what is typed next takes the place of what stands there. */
  fresh: boolean;
}

/** Units of quantities that go below zero. */
const BELOW_ZERO = new Set(["°C", "°F", "V"]);

/** Whether a value in a unit can be negative, so that a minus is offered. */
export function goesBelowZero(unit: string): boolean {
  return BELOW_ZERO.has(unit);
}

/** Writes behind what stands there, whatever it is. */
export function typeText(typed: Typed, text: string): Typed {
  return { text: typed.fresh ? text : typed.text + text, fresh: false };
}

/** Takes away the last character. */
export function backspace(typed: Typed): Typed {
  return { text: [...typed.text].slice(0, -1).join(""), fresh: false };
}

/** Puts a minus in front, or takes it away. */
export function turnSign(typed: Typed): Typed {
  const unsigned = typed.text.replace(/^[-−]/, "");
  return { text: unsigned === typed.text ? `-${unsigned}` : unsigned, fresh: false };
}

/** The unit after `unit` among `units`; the first after the last. */
export function nextUnit(units: string[], unit: string): string {
  return units[(units.indexOf(unit) + 1) % units.length] ?? unit;
}

/** A text with a word from the list put behind it. */
export function withWord(text: string, word: string): string {
  const before = text.trimEnd();
  if (before === "") return word;
  return /[.,;:!?–-]$/.test(before) ? `${before} ${word}` : `${before}, ${word}`;
}
