import { setTimeout as sleep } from "node:timers/promises";
import { afterEach, expect, test } from "vitest";
import { startTicker, type Ticker } from "../../src/delivery/ticker.ts";
import { listeningLog } from "./stand-ins.ts";

let ticker: Ticker | undefined;
afterEach(() => ticker?.stop());
const clock = { now: () => Date.now() };
const log = listeningLog();

async function until(done: () => boolean): Promise<void> {
  for (let waited = 0; !done() && waited < 3000; waited += 5) await sleep(5);
}

test("ticks at once, and again at the instant at which the next thing falls due", async () => {
  const due = [Date.now() + 120, Date.now() + 240];
  const ticks: number[] = [];
  ticker = startTicker({
    clock,
    log,
    tick: async () => {
      ticks.push(Date.now());
      while (due[0] !== undefined && due[0] <= Date.now()) due.shift();
    },
    next: async () => due[0] ?? null,
  });
  const [first = 0, second = 0] = due;
  await until(() => due.length === 0);
  expect(ticks.length).toBeLessThanOrEqual(5);
  expect(ticks.some((at) => at >= first && at < second)).toBe(true);
  expect(ticks.at(-1)).toBeGreaterThanOrEqual(second);
});

test("a nudge during a round makes one more round, and rounds never overlap", async () => {
  let running = 0;
  let most = 0;
  let rounds = 0;
  ticker = startTicker({
    clock,
    log,
    next: async () => null,
    tick: async () => {
      most = Math.max(most, ++running);
      rounds++;
      await sleep(30);
      running--;
    },
  });
  for (let n = 0; n < 10; n++) ticker.nudge();
  await until(() => rounds === 2 && running === 0);
  await sleep(80);
  expect({ most, rounds }).toEqual({ most: 1, rounds: 2 });
});

test("what is overdue and cannot be taken up does not make it spin; a failing round is logged and not the last", async () => {
  let rounds = 0;
  ticker = startTicker({
    clock,
    log,
    next: async () => Date.now() - 1000,
    tick: async () => {
      if (++rounds === 1) throw new Error("store is away");
    },
  });
  await sleep(150);
  expect(rounds).toBe(1);
  expect(log.lines.at(-1)).toMatchObject({ level: "error", data: { why: "Error: store is away" } });
  ticker.nudge();
  await sleep(150);
  expect(rounds).toBe(2);
});

test("stopping waits for the round under way and begins no other", async () => {
  let ended = false;
  let rounds = 0;
  const stopping = startTicker({
    clock,
    log,
    next: async () => Date.now() + 60,
    tick: async () => {
      rounds++;
      await sleep(60);
      ended = true;
    },
  });
  await sleep(10);
  await stopping.stop();
  expect(ended).toBe(true);
  stopping.nudge();
  await sleep(150);
  expect(rounds).toBe(1);
});
