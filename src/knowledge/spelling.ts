/** Which words a place of a file knows, and which of them was probably meant. */
import type { z } from "zod";

interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly element?: z.ZodType;
  readonly valueType?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly in?: z.ZodType;
  readonly items?: readonly z.ZodType[];
}
const definition = (schema: z.ZodType): Definition => (schema as unknown as { def: Definition }).def;

/** Words that an object at this place may have; none where it is no object with fixed words. */
export function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): readonly string[] {
  let here: z.ZodType | undefined = schema;
  for (const step of path) {
    const { shape, element, valueType, items }: Definition = definition(unwrapped(here));
    here = shape?.[String(step)] ?? element ?? valueType ?? items?.[Number(step)];
    if (!here) return [];
  }
  return Object.keys(definition(unwrapped(here)).shape ?? {});
}

function unwrapped(schema: z.ZodType): z.ZodType {
  const { innerType, in: before } = definition(schema);
  const inside = innerType ?? before;
  return inside ? unwrapped(inside) : schema;
}

/** The known word that differs least, when it is near enough to be a slip of the pen. */
export function nearest(word: string, known: readonly string[]): string | null {
  const longer = known.filter((one) => one.startsWith(word) || word.startsWith(one));
  if (longer.length === 1 && word.length >= 3) return longer[0] ?? null;
  const [best] = known.map((one) => ({ one, away: distance(word.toLowerCase(), one.toLowerCase()) })).sort((a, b) => a.away - b.away);
  return best && best.away <= Math.max(1, Math.floor(word.length / 3)) ? best.one : null;
}

/** Insertions, deletions, replacements and swaps of neighbours between two short words. */
export function distance(a: string, b: string): number {
  const rows = [...Array(a.length + 1)].map((_, i) => [...Array(b.length + 1)].map((__, j) => (i === 0 ? j : j === 0 ? i : 0)));
  const at = (i: number, j: number): number => rows[i]?.[j] ?? 0;
  for (let i = 1; i <= a.length; i++) {
    const row = rows[i] as number[];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) row[j] = Math.min(row[j] as number, at(i - 2, j - 2) + 1);
    }
  }
  return at(a.length, b.length);
}
