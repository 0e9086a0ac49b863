/** Characters of a message that routing reads; what comes after is ignored, so that the work never grows without bound. */
export const READ_CHARACTERS = 2000;

const isMark = (code: number): boolean => code >= 0x300 && code <= 0x36f;

/** Zero-width, direction, joiner and variation controls, and the soft hyphen: invisible, so never part of a word. */
const isInvisible = (code: number): boolean =>
  code === 0xad || code === 0x34f || code === 0x61c || (code >= 0x200b && code <= 0x200f) || (code >= 0x202a && code <= 0x202e) ||
  (code >= 0x2060 && code <= 0x206f) || (code >= 0xfe00 && code <= 0xfe0f) || code === 0xfeff;

const PLAIN: Readonly<Record<string, string>> = {
  "‘": "'", "’": "'", "`": "'", "´": "'", "ʼ": "'", "“": '"', "”": '"', "–": "-", "—": "-", "−": "-", "‐": "-", "‑": "-",
  "ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "đ": "d", "ı": "i", "º": "°",
};

/**
 * Lower case, compatibility forms and accents folded, invisible characters dropped, runs of a repeated letter cut to two,
 * runs of space to one. Linear in the text; reads at most READ_CHARACTERS.
 */
export function normalise(text: string): string {
  const folded = text.slice(0, READ_CHARACTERS).normalize("NFKD").toLowerCase();
  const end = Math.min(folded.length, READ_CHARACTERS * 2);
  let out = "";
  let last = "";
  let run = 0;
  for (let i = 0; i < end; i++) {
    const code = folded.charCodeAt(i);
    if (isMark(code) || isInvisible(code)) continue;
    let character = folded.charAt(i);
    if (code > 0x7e) character = PLAIN[character] ?? character;
    else if (code <= 0x20) character = " ";
    run = character === last ? run + 1 : 1;
    if (run > 2 && (code < 0x30 || code > 0x39)) continue;
    if (character === " " && last === " ") continue;
    last = character;
    out += character;
  }
  return out;
}
