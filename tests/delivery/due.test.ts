import { expect, test } from "vitest";
import { type DecideDue, runDue } from "../../src/delivery/due.ts";
import { deliver, deliverUntil } from "../../src/delivery/deliver.ts";
import { DAY, decided, dueOf, HOUR, heaterOf, MINUTE, NOW, say, saying, writeHeater } from "../store/made.ts";
import { world } from "./stand-ins.ts";

test("what fell due is decided once and sent once, with the reader's own settings", async () => {
  const { store, deps, posts, words, clock } = await world();
  await say(store, "ana", (s) => ({
    writes: [{ write: "person", person: { ...s.person, facts: { units: "us", timezone: "America/Denver" } } }],
    due: [dueOf(s, "now", NOW), dueOf(s, "later", NOW + HOUR)],
  }));
  expect(await deliver(deps)).toBe(2);
  expect(await deliver(deps)).toBe(0);
  expect(words()).toEqual(["now"]);
  expect(posts[0]).toMatchObject({
    row: { key: `now@${NOW}`, attempts: 0 },
    reader: { locale: "en", system: "us", timezone: "America/Denver" },
  });
  clock.by(HOUR);
  await deliver(deps);
  expect(words()).toEqual(["now", "later"]);
});

test("a thousand rows of forty people go out in order for each", async () => {
  const { store, deps, posts } = await world();
  for (let person = 0; person < 40; person++) {
    await say(store, `p${person}`, (s) => ({ due: Array.from({ length: 25 }, (_, n) => dueOf(s, `${person}/${n}`, NOW - 25 + n)) }));
  }
  expect(await runDue(deps, NOW)).toBe(1000);
  await deliver(deps);
  expect(posts).toHaveLength(1000);
  for (const [, of_place] of Map.groupBy(posts, ({ row }) => row.place_id)) {
    expect(of_place.map(({ row }) => row.due_at_ms)).toEqual(Array.from({ length: 25 }, (_, n) => NOW - 25 + n));
  }
});

test("a row that is not wanted any more is dropped; quiet hours move one without a word", async () => {
  const decideDue: DecideDue = (snapshot, row, now_ms) => {
    if (row.key === "unwanted") return null;
    return now_ms < NOW + 9 * HOUR
      ? { ...decided({ due: [dueOf(snapshot, row.key, NOW + 9 * HOUR)] }), answer: null }
      : decided({ answer: saying("good morning") });
  };
  const { store, deps, words, clock } = await world(undefined, { decideDue });
  await say(store, "ana", (s) => ({ due: [dueOf(s, "unwanted", NOW), dueOf(s, "quiet", NOW)] }));
  await deliver(deps);
  expect(words()).toEqual([]);
  await deliverUntil(deps, NOW + DAY);
  expect(words()).toEqual(["good morning"]);
  expect(clock.now()).toBe(NOW + DAY);
});

test("a row is decided with the heater it names at hand", async () => {
  const seen: (string | undefined)[] = [];
  const { store, deps } = await world(undefined, {
    decideDue: ({ heaters }) => {
      seen.push(heaters[0]?.id);
      return null;
    },
  });
  await say(store, "ana", (s) => ({ writes: [writeHeater(heaterOf(s, { id: "first" })), writeHeater(heaterOf(s, { id: "second" }))] }));
  await say(store, "ana", (s) => ({ due: [dueOf(s, "a", NOW), dueOf(s, "b", NOW, { payload: { heater_id: "second" } })] }));
  await deliver(deps);
  expect(seen).toEqual(["first", "second"]);
});

test("a row that cannot be decided waits longer and longer, holds up nobody, and is not lost", async () => {
  let broken = true;
  const decideDue: DecideDue = (_, row) => {
    if (broken && row.key === "bad") throw new Error("a mistake of ours");
    return decided({ answer: saying(row.key) });
  };
  const { store, deps, words, log, clock } = await world(undefined, { decideDue });
  await say(store, "ana", (s) => ({ due: [dueOf(s, "bad", NOW), dueOf(s, "good", NOW)] }));
  await deliver(deps);
  expect(words()).toEqual(["good"]);
  expect(log.lines).toMatchObject([{ level: "error", data: { key: "bad", why: "Error: a mistake of ours" } }]);
  const waits: number[] = [];
  for (let tries = 0; tries < 12; tries++) {
    const next_ms = (await store.nextDue()) ?? 0;
    waits.push(next_ms - clock.now());
    clock.to(next_ms);
    await deliver(deps);
  }
  expect(waits.slice(0, 4)).toEqual([1000, 2000, 4000, 8000]);
  expect(Math.max(...waits)).toBe(5 * MINUTE);
  broken = false;
  await deliverUntil(deps, clock.now() + HOUR);
  expect(words()).toEqual(["good", "bad"]);
});

test("a clock that is moved on delivers each thing at its own instant", async () => {
  const at: number[] = [];
  const { store, deps, clock } = await world(() => {
    at.push(clock.now());
    return { sent: true, native_id: null };
  });
  await say(store, "ana", (s) => ({ due: [3, 1, 2].map((n) => dueOf(s, `${n}`, NOW + n * HOUR)) }));
  await deliverUntil(deps, NOW + 2 * HOUR);
  expect(at).toEqual([NOW + HOUR, NOW + 2 * HOUR]);
  await deliverUntil(deps, NOW + 2 * HOUR);
  await deliverUntil(deps, NOW + DAY);
  expect(at).toEqual([1, 2, 3].map((n) => NOW + n * HOUR));
});

test("a chain: what falls due makes the next thing due", async () => {
  const decideDue: DecideDue = (s, row, now_ms) =>
    decided({ answer: saying(row.key), due: now_ms < NOW + 5 * HOUR ? [dueOf(s, `${row.key}'`, now_ms + HOUR)] : [] });
  const { store, deps, words } = await world(undefined, { decideDue });
  await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
  await deliverUntil(deps, NOW + DAY);
  expect(words()).toEqual(["k", "k'", "k''", "k'''", "k''''", "k'''''"]);
});
