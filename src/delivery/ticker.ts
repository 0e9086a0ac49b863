/**
 * The heartbeat: once a minute, and at the instant at which the next thing falls due when that comes sooner. It only ticks; what is due
 * is decided by the store, and no time of a person ever becomes a cron line.
 */
import { schedule } from "node-cron";
import type { Clock } from "../records/ports.ts";
import type { Log } from "./log.ts";

export interface TickerDeps {
  /** one round of delivery */
  readonly tick: () => Promise<unknown>;
  readonly next: () => Promise<number | null>;
  readonly clock: Pick<Clock, "now">;
  readonly log: Log;
}

export interface Ticker {
  /** Something was committed that may fall due soon. */
  nudge(): void;
  /** No more rounds; resolves when the one under way has ended. */
  stop(): Promise<void>;
}

const LONGEST_MS = 60_000;
const SHORTEST_MS = 50;

export function startTicker({ tick, next, clock, log }: TickerDeps): Ticker {
  let timer: NodeJS.Timeout | undefined;
  let running: Promise<void> | undefined;
  let wanted = false;
  let stopped = false;

  async function rounds(): Promise<void> {
    do {
      wanted = false;
      try {
        await tick();
        await arm();
      } catch (error) {
        log.error({ why: String(error) }, "delivery failed, next round within a minute");
      }
    } while (wanted && !stopped);
  }

  /** What is overdue even after a round cannot be taken up now: it waits for the minute. */
  async function arm(): Promise<void> {
    clearTimeout(timer);
    const next_ms = await next();
    const wait_ms = next_ms === null ? LONGEST_MS : next_ms - clock.now();
    if (wait_ms <= 0 || wait_ms >= LONGEST_MS || stopped) return;
    timer = setTimeout(nudge, Math.max(wait_ms, SHORTEST_MS));
  }

  function nudge(): void {
    if (stopped) return;
    wanted = true;
    running ??= rounds().finally(() => {
      running = undefined;
      if (wanted) nudge();
    });
  }

  const minute = schedule("* * * * *", nudge, { name: "gleed", timezone: "UTC", noOverlap: true, suppressMissedWarning: true });
  nudge();
  return {
    nudge,
    async stop() {
      stopped = true;
      clearTimeout(timer);
      await minute.destroy();
      await running;
    },
  };
}
