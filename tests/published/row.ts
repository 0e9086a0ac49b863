/** One published or independently computed value, and how to hold the shipped code against it. */

/**
 * seen: printed in a document that was read; memory: printed, but recalled; computed: worked out by hand or by other code from
 * printed inputs; library: frozen result of a reference library; emc-cell: a cell of the equilibrium-moisture table.
 */
export type Kind = "seen" | "memory" | "computed" | "library" | "emc-cell";

export interface Row {
  /** a calculator by name, or "module.ts#function" of src/reckoning */
  readonly of: string;
  /** the calculator's inputs, or the function's arguments */
  readonly inputs: unknown;
  readonly expected: number | Readonly<Record<string, number>>;
  /** largest difference allowed; abs in the result's own unit, rel as a share of the expected value */
  readonly abs?: number;
  readonly rel?: number;
  readonly source: string;
  readonly kind: Kind;
}

type Head = Omit<Row, "inputs" | "expected">;

/** Rows that share what they check, their source and their tolerance. */
export const table = (head: Head, rows: readonly (readonly [inputs: unknown, expected: Row["expected"], more?: Partial<Head>])[]): Row[] =>
  rows.map(([inputs, expected, more]) => ({ ...head, ...more, inputs, expected }));

/** @returns what is off, one text for each figure; empty when the row holds */
export function differences(row: Row, actual: unknown): string[] {
  const pairs: [string, number, unknown][] =
    typeof row.expected === "number"
      ? [["result", row.expected, actual]]
      : Object.entries(row.expected).map(([key, expected]) => [key, expected, (actual as Record<string, unknown> | undefined)?.[key]]);
  return pairs.flatMap(([key, expected, value]) => {
    const allowed = Math.max(row.abs ?? 0, (row.rel ?? 0) * Math.abs(expected));
    return typeof value === "number" && Math.abs(value - expected) <= allowed
      ? []
      : [`${key}: ${String(value)} instead of ${expected} within ${allowed}`];
  });
}

export const figures = (row: Row): number => (typeof row.expected === "number" ? 1 : Object.keys(row.expected).length);
