/** Tables in a fixed-width face: aligned columns where they fit, else one record after the other. */
import { pad, padStart, width, wrap } from "./width.ts";

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const GAP = 2;
/** Wordy columns give way first, short ones (a date, a name) only when that is not enough. */
const NARROWEST = [14, 8];
/** A row that takes more lines than this is easier read as a record. */
const TALLEST = 3;
/** Fields of a record that stand several to a line. */
const SHORT = 24;
const NUMERIC = /^[<>≈~]?\s?[−+-]?[\d.,]+(\s?\S{1,6})?$/u;

const cell = (row: readonly string[], at: number): string => row[at] ?? "";

/** Whether a column holds figures, which line up at their right. */
const isNumeric = (table: Table, at: number): boolean =>
  table.rows.length > 0 &&
  table.rows.every((row) => cell(row, at) === "" || NUMERIC.test(cell(row, at))) &&
  table.rows.some((row) => cell(row, at) !== "");

/** Widths that fit into `most` columns, taken off the widest one first; null when a column would get too thin to read. */
function widths(table: Table, most: number): number[] | null {
  const found = table.columns.map((head, at) => Math.max(1, width(head), ...table.rows.map((row) => width(cell(row, at)))));
  const fixed = table.columns.map((_, at) => isNumeric(table, at));
  let over = found.reduce((sum, one) => sum + one, 0) + GAP * (found.length - 1) - most;
  for (const narrowest of NARROWEST) {
    while (over > 0) {
      const wordy = found.map((columns, at) => (fixed[at] || columns <= narrowest ? 0 : columns));
      const widest = wordy.indexOf(Math.max(...wordy));
      if (!wordy[widest]) break;
      found[widest] = (found[widest] ?? 0) - 1;
      over -= 1;
    }
  }
  return over > 0 ? null : found;
}

export interface Aligned {
  /** heading and rule, to be repeated where a long table is cut */
  readonly head: readonly string[];
  /** the lines of each row */
  readonly rows: readonly (readonly string[])[];
}

/** The table in at most `most` columns, or null when it does not fit or would be a strain to read. */
export function align(table: Table, most: number): Aligned | null {
  if (table.columns.length === 0) return null;
  const found = widths(table, most);
  if (!found) return null;
  const right = table.columns.map((_, at) => isNumeric(table, at));
  const line = (row: readonly string[]): string[] => {
    const cells = found.map((columns, at) => wrap(cell(row, at), columns));
    const height = Math.max(...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, down) =>
      cells
        .map((lines, at) => (right[at] ? padStart : pad)(lines[down] ?? "", found[at] ?? 0))
        .join(" ".repeat(GAP))
        .trimEnd(),
    );
  };
  const rule = found.map((columns) => "─".repeat(columns)).join(" ".repeat(GAP));
  const rows = table.rows.map(line);
  return rows.some((lines) => lines.length > TALLEST) ? null : { head: [...line(table.columns), rule], rows };
}

/** One record a row: its first cell as the title, then "column: value" for what is filled in, short ones on one line. */
export const records = (table: Table): { readonly title: string; readonly lines: readonly string[] }[] =>
  table.rows.map((row) => {
    const fields = table.columns.slice(1).flatMap((head, at) => {
      const value = cell(row, at + 1);
      return value === "" ? [] : [head === "" ? value : `${head}: ${value}`];
    });
    // no-break spaces keep the name of a short field with its value
    const short = fields.filter((field) => width(field) <= SHORT).map((field) => field.replaceAll(" ", "\u00A0"));
    const long = fields.filter((field) => width(field) > SHORT);
    return { title: cell(row, 0), lines: short.length > 0 ? [short.join(" · "), ...long] : long };
  });
