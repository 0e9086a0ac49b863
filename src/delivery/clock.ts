/** Time, passed in everywhere: the machine's own, and one that moves only when told. */
import type { Clock } from "../records/ports.ts";

/** how fast time passes while the wall is behind: slow enough to meet it, fast enough for waits to mean what they say */
const BEHIND_PACE = 0.9;
const TOLD_FROM_MS = 1_000;

/**
 * The wall clock, kept from ever going back: where it jumps back, time goes on from where it was at nine tenths of its pace until the
 * wall has caught up (ten hours for one). A jump forward is believed.
 * @param not_before_ms latest instant already stored
 * @param wentBack told once each time the wall is found behind by more than a second
 */
export function systemClock(
  not_before_ms = 0,
  wall: () => number = Date.now,
  monotonic: () => number = () => performance.now(),
  wentBack: (behind_ms: number) => void = () => {},
): Clock {
  let anchor = { at_ms: not_before_ms, tick: monotonic() };
  let told = false;
  const ahead = wall() < not_before_ms;
  return {
    monotonic,
    ...(ahead ? { unsure_until_ms: not_before_ms } : {}),
    now() {
      const wall_ms = wall();
      const tick = monotonic();
      const paced_ms = Math.floor(anchor.at_ms + (tick - anchor.tick) * BEHIND_PACE);
      if (wall_ms < paced_ms) {
        if (!told && paced_ms - wall_ms > TOLD_FROM_MS) {
          told = true;
          wentBack(paced_ms - wall_ms);
        }
        return paced_ms;
      }
      told = false;
      anchor = { at_ms: wall_ms, tick };
      return wall_ms;
    },
  };
}

export interface SteppedClock extends Clock {
  /** @throws RangeError when it would go back */
  to(now_ms: number): void;
  by(ms: number): void;
}

/** Stands still until it is told. */
export function steppedClock(start_ms: number): SteppedClock {
  let now_ms = start_ms;
  const to = (next_ms: number) => {
    if (next_ms < now_ms)
      throw new RangeError(`a clock at ${new Date(now_ms).toISOString()} cannot go back to ${new Date(next_ms).toISOString()}`);
    now_ms = next_ms;
  };
  return { now: () => now_ms, monotonic: () => now_ms - start_ms, to, by: (ms) => to(now_ms + ms) };
}
