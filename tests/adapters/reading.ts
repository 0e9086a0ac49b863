/** What a reader of any network must find, whatever the network: every caution whole, all in the right order, nothing lost. */
import type { Answer } from "../../src/answer.ts";
import type { Outline } from "../../adapters/outline.ts";
import { plain } from "../../adapters/plain.ts";

/** Words without anything that only lays them out. */
export const squeeze = (words: string): string => words.replace(/[\s─]/gu, "");

const cautionWords = (answer: Answer): string[] => answer.cautions.map((caution) => squeeze(plain(String(caution.text.args?.words))));

/** Empty when every caution stands once and whole, before the headline, or in an emergency after it and the first steps. */
export function misreadings(answer: Answer, read: string): string[] {
  const seen = squeeze(read);
  const headline = seen.indexOf("⟪h");
  const wrong: string[] = headline < 0 || !seen.includes("h⟫") ? ["the headline is lost"] : [];
  for (const words of cautionWords(answer)) {
    const at = seen.indexOf(words);
    const mark = words.slice(0, 3);
    if (at < 0) wrong.push(`caution ${mark} is not whole`);
    if (seen.split(mark).length !== 2) wrong.push(`caution ${mark} stands ${seen.split(mark).length - 1} times`);
    if (!answer.emergency && at > headline) wrong.push(`caution ${mark} comes after the headline`);
    if (answer.emergency && at < headline) wrong.push(`caution ${mark} comes before what to do`);
  }
  const steps = answer.emergency ? answer.blocks.find((block) => block.kind === "steps") : undefined;
  const first = Math.min(Number.POSITIVE_INFINITY, ...cautionWords(answer).map((words) => seen.indexOf(words)));
  if (steps && !(headline < seen.indexOf("⟪s") && seen.indexOf("⟪s") < first))
    wrong.push("the first steps do not stand between headline and cautions");
  if (answer.emergency && seen.search(/⟦k|⟪s/) < headline) wrong.push("an emergency does not start with its headline");
  return wrong;
}

/** The first words of the outline that are missing in what is read, going through it in order. Tables are looked at elsewhere. */
export function lost(outline: Outline, read: string): string | null {
  const seen = squeeze(read);
  let from = 0;
  const find = (words: string | undefined): string | null => {
    if (!words) return null;
    const wanted = squeeze(words);
    const at = seen.indexOf(wanted, from);
    if (at < 0) return words;
    from = at + wanted.length;
    return null;
  };
  for (const piece of outline.pieces) {
    const all: (string | undefined)[] =
      piece.kind === "list"
        ? [piece.title]
        : piece.kind === "table"
          ? [piece.caption]
          : piece.kind === "numbers"
            ? piece.items.flatMap((item) => [item.label, item.value])
            : piece.kind === "causes"
              ? piece.groups.flatMap((group) => [
                  group.label,
                  ...group.causes.flatMap((cause) => [cause.title, cause.share, ...cause.because]),
                ])
              : piece.kind === "picture"
                ? [piece.alt.length < 900 ? piece.alt : undefined]
                : piece.kind === "document"
                ? [piece.title.length < 900 ? piece.title : undefined]
              : piece.kind === "form"
                  ? [piece.title, piece.summary]
                  : piece.kind === "quote"
                    ? [piece.who, piece.words]
                    : piece.kind === "choices"
                      ? piece.choices.map((choice) => choice.label)
                      : [piece.text];
    for (const words of all) {
      const missing = find(words);
      if (missing !== null) return missing;
    }
    for (const item of piece.kind === "list" ? piece.items : []) {
      const missing = find(item);
      if (missing !== null) return missing;
    }
  }
  return null;
}
