/** Measuring on a machine that others use too: processor time, not the clock; everything compared takes turns; medians. */

/** One figure held against its limit; null where it could not be measured. */
export interface Line {
  readonly what: string;
  readonly measured: number | null;
  readonly limit: number;
  /** whether the limit is the most or the least */
  readonly is: "at most" | "at least";
  readonly unit: string;
  readonly note?: string;
}

export const holds = ({ measured, limit, is }: Line): boolean => measured === null || (is === "at most" ? measured <= limit : measured >= limit);

export const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

/** Processor time of all threads of this process, ms. */
export async function cost_ms(work: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Medians of works that take turns, and the median of the ratios of neighbours, second to first. */
export async function inTurns(rounds: number, first: () => unknown, second: () => unknown, warmUp = 3): Promise<{ first_ms: number; second_ms: number; ratio: number }> {
  return taken(rounds, () => cost_ms(first), () => cost_ms(second), warmUp);
}

/** The same for works that tell their own processor time. */
export async function taken(rounds: number, first: () => number | Promise<number>, second: () => number | Promise<number>, warmUp = 3): Promise<{ first_ms: number; second_ms: number; ratio: number }> {
  const [firsts, seconds, ratios]: [number[], number[], number[]] = [[], [], []];
  for (let round = -warmUp; round < rounds; round++) {
    const [a, b] = [await first(), await second()];
    if (round < 0) continue;
    firsts.push(a);
    seconds.push(b);
    ratios.push(b / a);
  }
  return { first_ms: median(firsts), second_ms: median(seconds), ratio: median(ratios) };
}
