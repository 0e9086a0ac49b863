/** Months of bad luck by seed. `npm run soak` runs a million days; a seed that fails here fails there again. */
import { describe, expect, it } from "vitest";
import { months } from "./world.ts";

const SEEDS = process.env.GLEED_TEST_FULL ? 40 : 6;
const DAYS = 100;

describe(`${SEEDS} seeds of ${DAYS} days`, () => {
  it.each(Array.from({ length: SEEDS }, (_, i) => i + 1))("seed %i", { timeout: 60_000 }, async (seed) => {
    expect(await months(seed, DAYS)).toEqual([]);
  });
  it("seed 2950: a clock that was ahead, put right while the process was down, with a digest of unknown fate", { timeout: 60_000 }, async () => {
    expect(await months(2950, DAYS)).toEqual([]);
  });
});
