/** Sending under faults: what is tried again, when, under which key, and what is said about it. */
import { describe, expect, test } from "vitest";
import { deliver, deliverUntil } from "../../src/delivery/deliver.ts";
import type { Sent } from "../../src/delivery/outlet.ts";
import type { DueKind } from "../../src/records/types.ts";
import { DAY, dueOf, HOUR, MINUTE, NOW, say } from "../store/made.ts";
import { type Answering, type More, world } from "./stand-ins.ts";

const OK: Sent = { sent: true, native_id: "event" };
const lost: Answering = () => {
  throw new Error("connection reset");
};
const WINDOW_MS = 60_000;

async function one(kind: DueKind, answering: Answering, more: More & { readonly useful_ms?: number } = {}) {
  const made = await world(answering, more);
  await say(made.store, "ana", (s) => ({ due: [dueOf(s, "k", NOW, { kind, useful_until_ms: NOW + (more.useful_ms ?? DAY) })] }));
  return made;
}
const firstOnly =
  (first: Answering): Answering =>
  (row, nth) =>
    nth === 1 ? first(row, nth) : OK;

describe("within the window", () => {
  test.each(["guide-check-in", "light-by", "reminder", "upkeep", "digest"] as const)(
    "%s of unknown fate is sent again under the same key, unmarked",
    async (kind) => {
      const { deps, posts } = await one(kind, firstOnly(lost));
      await deliverUntil(deps, NOW + WINDOW_MS / 2);
      expect(posts.map(({ row }) => [row.key, row.maybe_repeat, row.attempts])).toEqual([
        [`k@${NOW}`, false, 0],
        [`k@${NOW}`, false, 1],
      ]);
    },
  );

  test("a network that says nothing at all is given up after a while, and tried again", async () => {
    const { deps, posts, log } = await one(
      "reminder",
      firstOnly(() => new Promise<Sent>(() => {})),
    );
    await deliverUntil(deps, NOW + WINDOW_MS / 2);
    expect(posts).toHaveLength(2);
    expect(log.lines[0]).toMatchObject({ level: "warn", data: { fate: "unknown", why: "Error: no word from the network within 0.05 s" } });
  });

  test("a network that says when to come again is obeyed", async () => {
    const { deps, posts, store } = await one(
      "guide-check-in",
      firstOnly(() => ({ sent: false, retry: true, after_ms: 45_000, why: "too many" })),
    );
    await deliver(deps);
    expect(await store.nextDue(["lines"])).toBe(NOW + 45_000);
    await deliverUntil(deps, NOW + 45_000);
    expect(posts).toHaveLength(2);
  });

  test("one that will never take it is left, and the log says why, without the words", async () => {
    const { deps, log, store } = await one("reminder", () => ({ sent: false, retry: false, why: "room closed" }));
    await deliver(deps);
    expect(log.lines).toMatchObject([{ level: "warn", words: "message dropped", data: { key: `k@${NOW}`, why: "room closed" } }]);
    expect(await store.nextDue(["lines"])).toBeNull();
  });
});

describe("beyond the window, where the network cannot tell", () => {
  const later = async (kind: DueKind, answering: Answering = firstOnly(lost)) => {
    const made = await one(kind, answering);
    await deliver(made.deps);
    made.clock.by(WINDOW_MS);
    await deliver(made.deps);
    return made;
  };

  test.each(["guide-check-in", "light-by", "reminder", "upkeep", "digest"] as const)("%s is sent marked as maybe a repeat", async (kind) => {
    expect((await later(kind)).posts.map(({ row }) => row.maybe_repeat)).toEqual([false, true]);
  });

  test("what is known not to have been sent is no repeat, however late", async () => {
    const { posts } = await later(
      "digest",
      firstOnly(() => ({ sent: false, retry: true, why: "maintenance" })),
    );
    expect(posts.map(({ row }) => row.maybe_repeat)).toEqual([false, false]);
  });

  test("the window is counted from the first attempt of unknown fate, not from the last", async () => {
    const { posts, deps, clock } = await one("reminder", (row, nth) => (nth <= 2 ? lost(row, nth) : OK));
    for (const wait_ms of [0, 0.7 * WINDOW_MS, 0.4 * WINDOW_MS]) {
      clock.by(wait_ms);
      await deliver(deps);
    }
    expect(posts.map(({ row }) => row.maybe_repeat)).toEqual([false, false, true]);
  });

  test("the mark stays with the row, and its window begins anew", async () => {
    const { posts, deps, clock, store } = await later("reminder", (row, nth) => (nth <= 2 ? lost(row, nth) : OK));
    clock.to((await store.nextDue(["lines"])) ?? 0);
    await deliver(deps);
    expect(posts.map(({ row }) => row.maybe_repeat)).toEqual([false, true, true]);
  });

  test("an instant in the future (the clock went back) counts as beyond", async () => {
    const made = await one("reminder", firstOnly(lost));
    await deliver(made.deps);
    const back = { ...made.deps, clock: { now: () => NOW - HOUR, monotonic: () => 0 } };
    const [row] = await made.store.claimOutgoing(["lines"], NOW + WINDOW_MS, 0, 1);
    if (!row) throw new Error("not claimed");
    await made.store.markFailed(row, NOW - HOUR, "again", row.unknown_since_ms);
    await deliver(back);
    expect(made.posts.map(({ row: sent }) => sent.maybe_repeat)).toEqual([false, true]);
  });
});

describe("beyond the window, where the network can tell", () => {
  const asked = async (answer: Sent | null | Error) => {
    const made = await one("digest", firstOnly(lost), {
      async lookUp() {
        if (answer instanceof Error) throw answer;
        return answer;
      },
    });
    await deliver(made.deps);
    made.clock.by(WINDOW_MS);
    await deliver(made.deps);
    return made;
  };

  test("what arrived is not sent again", async () => {
    const { posts, store } = await asked({ sent: true, native_id: "event 5" });
    expect(posts).toHaveLength(1);
    expect(await store.nextDue(["lines"])).toBeNull();
  });
  test("what did not arrive is sent, unmarked", async () => {
    expect((await asked({ sent: false, retry: true, why: "unknown" })).posts.map(({ row }) => row.maybe_repeat)).toEqual([false, false]);
  });
  test("what it cannot tell goes as the kind says", async () => {
    expect((await asked(null)).posts.map(({ row }) => row.maybe_repeat)).toEqual([false, true]);
  });
  test("when asking fails, it is asked again later", async () => {
    const { posts, store, clock } = await asked(new Error("network down"));
    expect(posts).toHaveLength(1);
    expect(await store.nextDue(["lines"])).toBeGreaterThan(clock.now());
  });
});

describe("too late", () => {
  const down: Answering = () => ({ sent: false, retry: true, why: "network down" });

  test.each(["guide-check-in", "reminder", "upkeep"] as const)(
    "%s is decided anew as things stand, and never says what it said before",
    async (kind) => {
      let up = false;
      const { deps, words, posts, clock } = await one(kind, (row, nth) => (up ? OK : down(row, nth)), { useful_ms: 10 * MINUTE });
      await deliverUntil(deps, NOW + 9 * MINUTE);
      expect(new Set(words())).toEqual(new Set(["k"]));
      await deliverUntil(deps, NOW + 2 * HOUR);
      up = true;
      await deliverUntil(deps, clock.now() + HOUR);
      const late = posts.filter(({ row }) => row.due_at_ms > NOW);
      expect(new Set(late.map(({ row }) => row.answer.headline.args?.words))).toEqual(new Set(["k: what do you see now?"]));
      expect(posts.slice(-late.length)).toEqual(late);
    },
  );

  test.each(["light-by", "digest"] as const)("%s is left", async (kind) => {
    const { deps, store, log } = await one(kind, down, { useful_ms: 10 * MINUTE });
    await deliverUntil(deps, NOW + HOUR);
    expect(log.lines.at(-1)).toMatchObject({ words: "message dropped", data: { why: "too late to be of use" } });
    expect(await store.nextDue(["lines"])).toBeNull();
  });

  test("a check-in never says the words of its time after its time, even where a repeat would be safe", async () => {
    const { deps, words, clock } = await one("guide-check-in", firstOnly(lost), {
      useful_ms: 10_000,
      windows_ms: { lines: DAY },
      random: () => 1,
    });
    await deliver(deps);
    clock.by(20_000);
    await deliver(deps);
    expect(words()).toEqual(["k", "k: what do you see now?"]);
  });

  test("off for a week: a reminder that fell due meanwhile arrives once", async () => {
    const { deps, words, clock } = await one("reminder", () => OK, { useful_ms: HOUR });
    clock.by(7 * DAY);
    await deliver(deps);
    expect(words()).toEqual(["k: what do you see now?"]);
    await deliverUntil(deps, clock.now() + 7 * DAY);
    expect(words()).toHaveLength(1);
  });
});

test("a network that is down for two days is tried ever more slowly, and loses nothing", async () => {
  let tries = 0;
  const { deps, clock, words } = await one(
    "reminder",
    () => (++tries && clock.now() < NOW + 2 * DAY ? { sent: false, retry: true, why: "down" } : OK),
    { useful_ms: 7 * DAY },
  );
  await deliverUntil(deps, NOW + 3 * DAY);
  expect(words().at(-1)).toBe("k");
  expect(tries).toBeGreaterThan(100);
  expect(tries).toBeLessThan(1500);
});

test("another's slow place holds up only itself", async () => {
  let release = () => {};
  const slow = new Promise<void>((resolve) => {
    release = resolve;
  });
  const order: string[] = [];
  const { deps, store } = await world(
    async (row) => {
      if (row.network_place_id.startsWith("ana")) await slow;
      order.push(row.network_place_id);
      if (order.length === 2) release();
      return OK;
    },
    { send_limit_ms: 5000 },
  );
  for (const name of ["ana", "ben", "cleo"]) await say(store, name, (s) => ({ due: [dueOf(s, name, NOW)] }));
  await deliver(deps);
  expect(order).toEqual(["ben's own", "cleo's own", "ana's own"]);
});
