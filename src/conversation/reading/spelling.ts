/** Spelling repair against a fixed list of words. */

/** Whether two words differ by at most one letter added, left out, changed or swapped with its neighbour. Linear in their length. */
export function oneSlipApart(a: string, b: string): boolean {
  if (a === b) return true;
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1) return false;
  let i = 0;
  while (i < short.length && short[i] === long[i]) i += 1;
  if (short.slice(i) === long.slice(i + 1)) return true;
  if (short.length !== long.length) return false;
  if (short.slice(i + 1) === long.slice(i + 1)) return true;
  return short[i] === long[i + 1] && short[i + 1] === long[i] && short.slice(i + 2) === long.slice(i + 2);
}

/** Looks words up, letting one slip pass in words of `from` letters and more with the right first letter. */
export class Speller<T> {
  readonly #exact = new Map<string, T>();
  readonly #byStart = new Map<string, string[]>();
  readonly #from: number;
  readonly #never: ReadonlySet<string>;
  readonly #seen = new Map<string, T | null>();

  /** @param more.never everyday words that are no slip of anything in the list; repaired: only these are found by a slip */
  constructor(entries: Iterable<readonly [string, T]>,
    more: { readonly from?: number; readonly never?: Iterable<string>; readonly repaired?: ReadonlySet<string> } = {}) {
    this.#from = more.from ?? 5;
    this.#never = new Set(more.never ?? []);
    for (const [word, value] of entries) {
      if (!this.#exact.has(word)) this.#exact.set(word, value);
      if (word.length < this.#from || (more.repaired && !more.repaired.has(word))) continue;
      const start = word[0] ?? "";
      const list = this.#byStart.get(start) ?? [];
      list.push(word);
      this.#byStart.set(start, list);
    }
  }

  exact(word: string): T | undefined {
    return this.#exact.get(word);
  }

  find(word: string): { readonly value: T; readonly repaired: boolean } | null {
    const exact = this.#exact.get(word);
    if (exact !== undefined) return { value: exact, repaired: false };
    if (word.length < this.#from || this.#never.has(word)) return null;
    let near = this.#seen.get(word);
    if (near === undefined) {
      const match = this.#byStart.get(word[0] ?? "")?.find((known) => oneSlipApart(word, known));
      near = match === undefined ? null : (this.#exact.get(match) ?? null);
      if (this.#seen.size < 5000) this.#seen.set(word, near);
    }
    return near === null ? null : { value: near, repaired: true };
  }
}
