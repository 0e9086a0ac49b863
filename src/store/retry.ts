/** Waiting for a locked database between turns of the event loop, so that nothing else (an emergency, above all) waits with it. */
import { setTimeout as sleep } from "node:timers/promises";

/** waits between tries, in milliseconds: some three seconds in all */
const WAITS_MS = [1, 2, 5, 10, 20, 40, 80, 150, 250, 400, 600, 700, 800];

export async function patiently<T>(
  work: () => Promise<T>,
  isBusy: (error: unknown) => boolean,
  waits_ms: readonly number[] = WAITS_MS,
): Promise<T> {
  for (const wait_ms of waits_ms) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error)) throw error;
    }
    await sleep(wait_ms);
  }
  return work();
}
