/** Words made safe to lay out: no control characters, nothing invisible that reorders or hides text, well-formed Unicode. */

/** Joiners mean something only inside emoji and in scripts that shape letters; elsewhere they hide text. */
const MISPLACED_JOINER =
  /(?<![\p{Script=Arabic}\p{Script=Syriac}\p{Script=Mongolian}\p{M}\p{Extended_Pictographic}\p{Emoji_Modifier}])[\u200C\u200D]/gu;
/** Escape sequences of terminals (ECMA-48): taken whole, so that no "[31m" stays behind. */
const ESCAPE_SEQUENCE = new RegExp(
  [
    /(?:\u001B\[|\u009B)[\u0030-\u003F]*[\u0020-\u002F]*[\u0040-\u007E]/, // control sequences
    /(?:\u001B\]|\u009D)[^\u0007\u001B\u009C]*(?:\u0007|\u001B\\|\u009C)?/, // commands to the terminal, such as a link
  ]
    .map((one) => one.source)
    .join("|"),
  "g",
);
const INVISIBLE = new RegExp(
  `[${[
    String.raw`\u0000-\u0009\u000B-\u001F\u007F-\u009F`, // controls, but for the line feed
    String.raw`\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069`, // directions
    String.raw`\u00AD\u034F\u200B\u2060-\u2065\u206A-\u206F\uFEFF`, // no width
    String.raw`\u115F\u1160\u17B4\u17B5\u180B-\u180F\u3164\uFFA0`, // fillers
    String.raw`\uFFF0-\uFFFB\u{1D173}-\u{1D17A}\u{E0000}-\u{E0FFF}`, // annotations and tags
    String.raw`\p{Noncharacter_Code_Point}`, // no parser of HTML takes them
  ].join("")}]`,
  "gu",
);

/** More marks on one letter than writing puts there only paint over the lines around. */
const STACKED_MARKS = /(\p{M}{8})\p{M}+/gu;

/** Paragraphs: line breaks stay, everything else that does not show is taken out. */
export function plain(words: string): string {
  if (/^[\x20-\x7E]*$/.test(words)) return words.trim();
  return words
    .toWellFormed()
    .replace(ESCAPE_SEQUENCE, "")
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, "\n")
    .replace(/\t/g, " ")
    .replace(INVISIBLE, "")
    .replace(MISPLACED_JOINER, "")
    .replace(STACKED_MARKS, "$1")
    .replace(/\n{3,}/g, "\n\n")
    .trim();
}

/** A label, a cell, an item of a list: one line. */
export const oneLine = (words: string): string => plain(words).replace(/\s+/g, " ");

const graphemes = new Intl.Segmenter(undefined, { granularity: "grapheme" });
export const letters = (words: string): string[] => Array.from(graphemes.segment(words), (part) => part.segment);

/** Of the letters in real use, in UTF-16 units (emoji of a family, flags of a region). */
const LONGEST_LETTER = 40;

/** At most `most` UTF-16 units, cut between letters and marked as cut. Only for what also stands somewhere in full. */
export function shorten(words: string, most: number): string {
  if (words.length <= most) return words;
  let kept = "";
  for (const letter of letters(words.slice(0, most + LONGEST_LETTER))) {
    if (kept.length + letter.length > most - 1) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}
