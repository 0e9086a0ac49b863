import { describe, expect, test } from "vitest";
import type { Store } from "../../../src/records/ports.ts";
import { DAY, decided, dueOf, HOUR, MINUTE, NOW, say, saying, snapshotOf } from "../../store/made.ts";

export function outbox(store: Store): void {
  describe("the outbox", () => {
    async function waiting(...keys: string[]) {
      await say(store, "ana", ({ person, place }) => ({
        writes: [{ write: "person", person: { ...person, facts: { units: "us" } } }],
        also_tell: keys.map((key) => ({ key, person_id: person.id, place_id: place.id, answer: saying(key) })),
      }));
    }

    test("gives a row to one, only for networks that run, with the reader's settings", async () => {
      await waiting("a");
      expect(await store.claimOutgoing([], NOW, MINUTE, 10)).toEqual([]);
      expect(await store.claimOutgoing(["matrix"], NOW, MINUTE, 10)).toEqual([]);
      expect(await store.nextDue(["matrix"])).toBeNull();
      expect(await store.nextDue(["lines"])).toBe(NOW);
      const claims = await Promise.all([1, 2, 3].map(() => store.claimOutgoing(["matrix", "lines"], NOW, MINUTE, 10)));
      expect(claims.flat()).toMatchObject([
        { key: "a", kind: "tell", answer: saying("a"), facts: { units: "us" }, useful_until_ms: NOW + 12 * HOUR },
      ]);
    });

    test("attempted, failed, attempted, sent: instants and counts", async () => {
      await waiting("a");
      const claim = async (now_ms: number) => (await store.claimOutgoing(["lines"], now_ms, MINUTE, 10))[0];
      let row = await claim(NOW);
      if (!row) throw new Error("not claimed");
      expect(await store.markAttempted(row, NOW)).toBe(true);
      await store.markFailed(row, NOW + 5, "no word", NOW);
      expect(await claim(NOW + 4)).toBeUndefined();
      row = await claim(NOW + 5);
      expect(row).toMatchObject({ attempts: 1, unknown_since_ms: NOW, maybe_repeat: false });
      if (!row) throw new Error("not claimed");
      await store.markAttempted(row, NOW + 5);
      await store.markFailed(row, NOW + 9, "busy", row.unknown_since_ms);
      row = await claim(NOW + 9);
      expect(row).toMatchObject({ attempts: 2, unknown_since_ms: NOW });
      if (!row) throw new Error("not claimed");
      await store.markAttempted(row, NOW + 9, { maybe_repeat: true });
      await store.markFailed(row, NOW + 10, "no word", NOW + 9);
      row = await claim(NOW + 10);
      expect(row).toMatchObject({ attempts: 3, unknown_since_ms: NOW + 9, maybe_repeat: true });
      if (!row) throw new Error("not claimed");
      await store.markAttempted(row, NOW + 10);
      await store.markSent(row, "event 7", NOW + 11);
      expect(await claim(NOW + DAY)).toBeUndefined();
      expect(await store.lastInstant()).toBe(NOW + 11);
      const { outgoing } = await store.exportPerson(row.person_id);
      expect(outgoing).toMatchObject([{ key: "a", state: "sent", native_id: "event 7", sent_at_ms: NOW + 11 }]);
      expect(outgoing).not.toHaveProperty("0.answer");
    });

    test("the same key is never sent twice", async () => {
      await waiting("a");
      for (const row of await store.claimOutgoing(["lines"], NOW, MINUTE, 10)) await store.markSent(row, null, NOW);
      await waiting("a", "b");
      expect((await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).map(({ key }) => key)).toEqual(["b"]);
    });

    test("a row cancelled before the attempt is not attempted", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
      for (const row of await store.claimDue(NOW, MINUTE, 10))
        await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW);
      const [row] = await store.claimOutgoing(["lines"], NOW, MINUTE, 10);
      if (!row) throw new Error("not claimed");
      await say(store, "ana", () => ({ cancel: ["k"] }));
      expect(await store.markAttempted(row, NOW)).toBe(false);
    });

    test("too late: back among the due rows, as it was", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW, { kind: "guide-check-in", payload: { step: 3 } })] }));
      for (const row of await store.claimDue(NOW, MINUTE, 10))
        await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW);
      const [row] = await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 10);
      if (!row) throw new Error("not claimed");
      expect(await store.decideAgain(row, NOW + DAY)).toBe(true);
      expect(await store.decideAgain(row, NOW + DAY)).toBe(false);
      expect(await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 10)).toEqual([]);
      expect(await store.claimDue(NOW + DAY, MINUTE, 10)).toMatchObject([
        { key: "k", kind: "guide-check-in", due_at_ms: NOW, useful_until_ms: NOW + HOUR, payload: { step: 3 } },
      ]);
    });

    test("tidying leaves what waits", async () => {
      await waiting("sent", "waits");
      const rows = await store.claimOutgoing(["lines"], NOW, 0, 10);
      for (const row of rows) if (row.key === "sent") await store.markSent(row, null, NOW);
      expect(await store.tidy(NOW)).toBe(0);
      expect(await store.tidy(NOW + 1)).toBe(2);
      expect((await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).map(({ key }) => key)).toEqual(["waits"]);
    });
  });
}
