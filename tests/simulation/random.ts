/** Random numbers that a seed brings back (mulberry32, public domain): same seed, same run. */
export interface Random {
  /** 0 (included) to 1 (excluded) */
  next(): number;
  /** whole numbers, both ends included */
  from(low: number, high: number): number;
  chance(share: number): boolean;
  of<T>(list: readonly [T, ...T[]]): T;
}

export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const from = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return { next, from, chance: (share) => next() < share, of: (list) => list[from(0, list.length - 1)] ?? list[0] };
}
