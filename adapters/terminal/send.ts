/** Writing to the terminal: below what stands there, or in place of the live answer when that is the last thing on the screen. */
import { clearScreenDown, cursorTo, moveCursor } from "node:readline";
import type { Interface } from "node:readline/promises";
import type { Writable } from "node:stream";
import { width } from "../width.ts";
import type { Screen } from "./render.ts";

export type Output = Writable & {
  readonly isTTY?: boolean;
  readonly columns?: number;
  readonly rows?: number;
  hasColors?(): boolean;
};

export const PROMPT = "> ";

export interface Writer {
  readonly screen: () => Screen;
  /** `live`: key of the answer that these lines show, to be replaced by the next ones with that key */
  write(lines: readonly string[], live?: string): void;
  /** a line was typed: the prompt stands on the next row */
  typed(line: string): void;
  prompt(): void;
}

export function writer(output: Output, rl: () => Interface | null, colour: boolean): Writer {
  const inPlace = output.isTTY === true;
  /** rows of the live answer and all below it, down to the row of the prompt */
  let live: { key: string; rows: number } | null = null;
  let prompting = false;
  output.on("resize", () => {
    live = null;
  });
  // one column is left free: a full row would move the cursor on by itself
  const columns = (): number => (output.columns ?? 80) - (inPlace ? 1 : 0);

  function write(lines: readonly string[], key?: string): void {
    const reader = rl();
    if (inPlace && reader) {
      const up = prompting ? reader.getCursorPos().rows : 0;
      const replaced = key !== undefined && live?.key === key && live.rows + up < (output.rows ?? 24) ? live.rows : 0;
      cursorTo(output, 0);
      if (up + replaced > 0) moveCursor(output, 0, -(up + replaced));
      clearScreenDown(output);
    }
    output.write(`${lines.join("\n")}\n\n`);
    live = key === undefined ? null : { key, rows: lines.length + 1 };
    if (prompting) reader?.prompt(true);
  }

  return {
    screen: () => ({ columns: columns(), colour }),
    write,
    typed(line) {
      prompting = false;
      if (live) live.rows += Math.floor((PROMPT.length + width(line)) / (output.columns ?? 80)) + 1;
      if (inPlace) {
        output.write("\n");
        if (live) live.rows += 1;
      }
    },
    prompt() {
      if (!inPlace) return;
      prompting = true;
      rl()?.prompt(true);
    },
  };
}
