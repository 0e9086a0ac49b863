/** Lines of text for drawings, where nothing wraps by itself. Widths are estimated by letter, a little on the wide side. */

const NARROW = new Set("iljtfrI.,:;'|!()[]- ".split(""));
const WIDE = new Set("mwMWÄÖÜOQGD@%".split(""));

/** Width in ems of a line in a usual sans-serif. */
export const ems = (line: string): number => [...line].reduce((sum, letter) => sum + (NARROW.has(letter) ? 0.34 : WIDE.has(letter) ? 0.86 : 0.58), 0);

/** A no-break space holds words together. @param most_em widest line; a longer single word is cut */
export function wrap(words: string, most_em: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of words.split(/[ \n\t]+/).filter((one) => one !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && ems(longer) > most_em) {
      lines.push(line);
      line = word;
    } else line = longer;
    while (ems(line) > most_em && line.length > 4) {
      let cut = line.length - 1;
      while (cut > 2 && ems(line.slice(0, cut)) > most_em - 0.4) cut--;
      lines.push(`${line.slice(0, cut)}-`);
      line = line.slice(cut);
    }
  }
  return line === "" ? lines : [...lines, line];
}
