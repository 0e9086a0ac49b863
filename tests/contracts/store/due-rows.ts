import { describe, expect, test } from "vitest";
import type { Store } from "../../../src/records/ports.ts";
import { DAY, decided, dueOf, HOUR, MINUTE, NOW, say, saying, snapshotOf } from "../../store/made.ts";

export function dueRows(store: Store): void {
  describe("due rows", () => {
    test("are claimed once, when due, in order, by a clock that stands still", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "late", NOW + 2), dueOf(s, "early", NOW), dueOf(s, "tomorrow", NOW + DAY)] }));
      expect(await store.nextDue()).toBe(NOW);
      expect(await store.claimDue(NOW - 1, MINUTE, 10)).toEqual([]);
      expect((await store.claimDue(NOW + 2, MINUTE, 10)).map(({ key }) => key)).toEqual(["early", "late"]);
      expect(await store.claimDue(NOW + 2, MINUTE, 10)).toEqual([]);
      expect(await store.nextDue()).toBe(NOW + DAY);
    });

    test("asking twice makes one row, and the second asking moves it", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW), dueOf(s, "k", NOW + HOUR)] }));
      expect(await store.claimDue(NOW, MINUTE, 10)).toEqual([]);
      expect(await store.claimDue(NOW + HOUR, MINUTE, 10)).toHaveLength(1);
    });

    test("are cancelled by key and by beginning, with what they caused and is not yet sent", async () => {
      await say(store, "ana", (s) => ({
        due: ["guide:1", "guide:2", "guidé", "guid", "guide:10", "other"].map((key) => dueOf(s, key, NOW)),
      }));
      const [row] = (await store.claimDue(NOW, 1, 10)).filter(({ key }) => key === "guide:2");
      if (!row) throw new Error("not claimed");
      await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW);
      await say(store, "ana", (s) => ({ due: [dueOf(s, "guide:1", NOW)], cancel: ["guide:1"] }));
      expect(await store.nextDue()).toBe(NOW);
      await say(store, "ana", () => ({ cancel: ["guide:*"] }));
      expect(await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).toEqual([]);
      await say(store, "ana", (s) => ({ due: ["guidé", "guid", "other"].map((key) => dueOf(s, key, NOW)) }));
      expect((await store.claimDue(NOW, MINUTE, 10)).map(({ key }) => key).toSorted()).toEqual(["guid", "guidé", "other"]);
    });

    test("an answer leaves the row and enters the outbox in one commit; a second commit finds nothing", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
      const [row] = await store.claimDue(NOW, MINUTE, 10);
      if (!row) throw new Error("not claimed");
      const seen = await snapshotOf(store, "ana");
      const commits = await Promise.all(
        [1, 2].map((n) => store.commit({ cause: "due", row }, seen, decided({ answer: saying(`${n}`) }), NOW)),
      );
      expect(commits.map(({ outcome }) => outcome).toSorted()).toEqual(["committed", "gone"]);
      expect(await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).toMatchObject([
        {
          key: `k@${NOW}`,
          kind: "reminder",
          network: "lines",
          network_place_id: "ana's own",
          attempts: 0,
          maybe_repeat: false,
          unknown_since_ms: null,
        },
      ]);
      expect(await store.nextDue(["lines"])).toBeNull();
    });

    test("a row that was moved or cancelled while it was worked on is gone", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "moved", NOW), dueOf(s, "cancelled", NOW)] }));
      const rows = await store.claimDue(NOW, MINUTE, 10);
      await say(store, "ana", (s) => ({ due: [dueOf(s, "moved", NOW + HOUR)], cancel: ["cancelled"] }));
      for (const row of rows)
        expect(await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW)).toEqual({ outcome: "gone" });
      expect((await store.claimDue(NOW + HOUR, MINUTE, 10)).map(({ key }) => key)).toEqual(["moved"]);
    });

    test("no answer sends nothing and keeps what was decided; dropped and postponed rows", async () => {
      await say(store, "ana", (s) => ({ due: ["quiet", "drop", "wait"].map((key) => dueOf(s, key, NOW)) }));
      for (const row of await store.claimDue(NOW, MINUTE, 10)) {
        const seen = await snapshotOf(store, "ana");
        if (row.key === "quiet")
          await store.commit(
            { cause: "due", row },
            seen,
            { ...decided({ due: [dueOf(seen, "quiet", NOW + 9 * HOUR)] }), answer: null },
            NOW,
          );
        if (row.key === "drop") await store.dropDue(row);
        if (row.key === "wait") await store.postponeDue(row, NOW + HOUR);
      }
      expect(await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).toEqual([]);
      expect(await store.claimDue(NOW + HOUR - 1, MINUTE, 10)).toEqual([]);
      expect(await store.claimDue(NOW + HOUR, MINUTE, 10)).toMatchObject([{ key: "wait", due_at_ms: NOW, attempts: 2 }]);
      expect(await store.claimDue(NOW + 9 * HOUR, MINUTE, 10)).toMatchObject([{ key: "quiet", due_at_ms: NOW + 9 * HOUR }]);
    });

    test("what was decided too late stands for now and is useful from now on", async () => {
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW)] }));
      const [row] = await store.claimDue(NOW + DAY, MINUTE, 10);
      if (!row) throw new Error("not claimed");
      await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW + DAY);
      expect(await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 1)).toMatchObject([
        { key: `k@${NOW + DAY}`, useful_until_ms: NOW + DAY + HOUR },
      ]);
    });
  });
}
