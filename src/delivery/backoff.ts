/** Full jitter: anything between nothing and a ceiling that doubles, so that many who fail together do not come back together. */
const FIRST_MS = 2_000;

/**
 * @param attempts tries so far, 1 or more
 * @param random 0 (included) to 1 (excluded)
 * @returns milliseconds, at least 1, so that a row never comes back in the same instant
 */
export function fullJitter(attempts: number, random: () => number, longest_ms: number): number {
  const ceiling = Math.min(longest_ms, FIRST_MS * 2 ** Math.min(attempts - 1, 30));
  return Math.max(1, Math.round(random() * ceiling));
}
