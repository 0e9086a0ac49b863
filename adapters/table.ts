/** Tables in a fixed-width face: aligned columns where they fit, else one record after the other. */
import { pad, padStart, width, wrap } from "./width.ts";

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const GAP = 2;
const NARROWEST = 8;
const NUMERIC = /^[<>≈~]?\s?[−+-]?[\d.,]+(\s?\S{1,6})?$/u;

const cell = (row: readonly string[], at: number): string => row[at] ?? "";

/** Whether a column holds figures, which line up at their right. */
const isNumeric = (table: Table, at: number): boolean =>
  table.rows.length > 0 && table.rows.every((row) => cell(row, at) === "" || NUMERIC.test(cell(row, at))) && table.rows.some((row) => cell(row, at) !== "");

/** Widths that fit into `most` columns, taken off the widest one first; null when a column would get too thin to read. */
function widths(table: Table, most: number): number[] | null {
  const found = table.columns.map((head, at) => Math.max(1, width(head), ...table.rows.map((row) => width(cell(row, at)))));
  const fixed = table.columns.map((_, at) => isNumeric(table, at));
  let over = found.reduce((sum, one) => sum + one, 0) + GAP * (found.length - 1) - most;
  while (over > 0) {
    let widest = -1;
    for (let at = 0; at < found.length; at++) {
      if (!fixed[at] && (found[at] ?? 0) > NARROWEST && (found[at] ?? 0) > (found[widest] ?? 0)) widest = at;
    }
    if (widest < 0) return null;
    found[widest] = (found[widest] ?? 0) - 1;
    over -= 1;
  }
  return found;
}

export interface Aligned {
  /** heading and rule, to be repeated where a long table is cut */
  readonly head: readonly string[];
  /** the lines of each row */
  readonly rows: readonly (readonly string[])[];
}

/** The table in at most `most` columns, or null when it does not fit. */
export function align(table: Table, most: number): Aligned | null {
  if (table.columns.length === 0) return null;
  const found = widths(table, most);
  if (!found) return null;
  const right = table.columns.map((_, at) => isNumeric(table, at));
  const line = (row: readonly string[]): string[] => {
    const cells = found.map((columns, at) => wrap(cell(row, at), columns));
    const height = Math.max(...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, down) =>
      cells.map((lines, at) => (right[at] ? padStart : pad)(lines[down] ?? "", found[at] ?? 0)).join(" ".repeat(GAP)).trimEnd());
  };
  return { head: [...line(table.columns), found.map((columns) => "─".repeat(columns)).join(" ".repeat(GAP))], rows: table.rows.map(line) };
}

/** One record a row: its first cell as the title, then "column: value" for what is filled in. */
export const records = (table: Table): { readonly title: string; readonly lines: readonly string[] }[] =>
  table.rows.map((row) => ({
    title: cell(row, 0),
    lines: table.columns.slice(1).flatMap((head, at) => (cell(row, at + 1) === "" ? [] : [head === "" ? cell(row, at + 1) : `${head}: ${cell(row, at + 1)}`])),
  }));
