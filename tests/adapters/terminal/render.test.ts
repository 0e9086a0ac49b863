import fc from "fast-check";
import { expect, test } from "vitest";
import { renderTerminal } from "../../../adapters/terminal/render.ts";
import { width } from "../../../adapters/width.ts";
import { anyAnswer } from "../any-answer.ts";
import { lost, misreadings } from "../reading.ts";
import { three } from "../three-answers.ts";
import { reader, render } from "../words.ts";

/** Everything that moves a cursor, colours, hides or turns round what follows. */
const UNSEEN = /[\u0000-\u001F\u007F-\u009F\u200B\u200E\u200F\u202A-\u202E\u2060-\u2069\uFEFF\u{E0000}-\u{E007F}]/u;

/** Marks that the lay-out puts around words that are broken over lines. */
const bare = (lines: readonly string[]): string =>
  lines
    .map((line) => line.replace(/^ {2}\| /, ""))
    .join("\n")
    .replaceAll("CAUTION", "Caution");

test("any answer fits the columns, its cautions first and whole, with nothing that a terminal would obey", { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(anyAnswer, fc.constantFrom(20, 40, 80, 120, 200), ({ answer, maybe_repeat }, columns) => {
      const { lines, outline } = renderTerminal(answer, { render, reader, maybe_repeat }, { columns, colour: false });
      for (const line of lines) {
        if (width(line) > columns) throw new Error(`${width(line)} columns: ${line}`);
        if (UNSEEN.test(line) || !line.isWellFormed()) throw new Error(`unseen: ${JSON.stringify(line)}`);
      }
      expect(misreadings(answer, bare(lines))).toEqual([]);
      expect(lost(outline, bare(lines))).toBeNull();
    }),
    { numRuns: 4_000, seed: 8 },
  );
});

test.each(Object.entries(three))("%s reads as it should at 40, 80 and 120 columns", (_, answer) => {
  for (const columns of [40, 80, 120])
    expect(renderTerminal(answer, { render, reader }, { columns, colour: false }).lines.join("\n")).toMatchSnapshot();
});

test("colour changes no word", () => {
  const shown = (colour: boolean): string => renderTerminal(three.trouble, { render, reader }, { columns: 80, colour }).lines.join("\n");
  expect(shown(true)).not.toBe(shown(false));
  expect(shown(true).replace(/\u001B\[\d+m/g, "")).toBe(shown(false));
});
