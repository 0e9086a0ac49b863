/** The short code of a shared reckoning: letter, figure, letter, figure, of signs that nobody mistakes for another when read aloud or by hand. */

/** without I, L, O, Q, U (figures, or each other), B, S, Z (8, 5, 2), V (U) */
const LETTERS = "ACDEFGHJKMNPRTWXY";
/** without 0, 1, 5, 8 */
const FIGURES = "234679";

const SHAPE = `[${LETTERS}][${FIGURES}][${LETTERS}][${FIGURES}]`;
const IN_TEXT = new RegExp(`(?<![\\p{L}\\d])${SHAPE}(?![\\p{L}\\d])`, "giu");
const WHOLE = new RegExp(`^${SHAPE}$`, "i");
const COUNT = (LETTERS.length * FIGURES.length) ** 2;

export const isCode = (word: string): boolean => WHOLE.test(word);
/** Codes in a message, in capitals, at most four. */
export const codesIn = (words: string): string[] => [...new Set((words.slice(0, 2000).match(IN_TEXT) ?? []).map((code) => code.toUpperCase()))].slice(0, 4);

/**
 * A code made of what caused it, so that the same event makes the same card; past those in use.
 * @throws RangeError when the group has used every code there is
 */
export function codeFor(cause: string, used: readonly string[]): string {
  const taken = new Set(used);
  const start = hash(cause) % COUNT;
  for (let step = 0; step < COUNT; step++) {
    const code = spelt((start + step * STRIDE) % COUNT);
    if (!taken.has(code)) return code;
  }
  throw new RangeError("every code of this group is in use");
}

/** no common factor with the count (17² · 6²), so that every code is reached */
const STRIDE = 4099;

function spelt(number: number): string {
  let rest = number;
  const next = (signs: string): string => {
    const sign = signs[rest % signs.length] ?? "";
    rest = Math.floor(rest / signs.length);
    return sign;
  };
  return next(LETTERS) + next(FIGURES) + next(LETTERS) + next(FIGURES);
}

/** FNV-1a, 32 bits: spreads, guards nothing. */
function hash(words: string): number {
  let value = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) value = Math.imul(value ^ words.charCodeAt(i), 0x01000193) >>> 0;
  return value;
}

const LINK = new RegExp(`(?<![\\p{L}\\d])(${SHAPE})-?(${SHAPE})(?![\\p{L}\\d])`, "giu");
/** Codes by which a place may be linked, in capitals, without the hyphen they are shown with. */
export const linkCodesIn = (words: string): string[] => [...words.slice(0, 400).matchAll(LINK)].map(([, a = "", b = ""]) => (a + b).toUpperCase()).slice(0, 2);

/** Two short codes in a row: some hundred million, each good for minutes and once. @param lot at least 16 hexadecimal digits drawn at random */
export function linkCode(lot: string): string {
  const number = BigInt(`0x${lot}`);
  return spelt(Number(number % BigInt(COUNT))) + spelt(Number((number / BigInt(COUNT)) % BigInt(COUNT)));
}
export const linkShown = (code: string): string => `${code.slice(0, 4)}-${code.slice(4)}`;
