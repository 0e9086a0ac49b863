/** Looking at many people, and keeping what falls due for many, in one go: the same as one after another. */
import { describe, expect, test } from "vitest";
import type { Store } from "../../../src/records/ports.ts";
import type { Snapshot } from "../../../src/records/types.ts";
import { VERSIONS } from "../../../src/store/snapshot.ts";
import { DAY, decided, dueOf, fireOf, guideOf, heaterOf, MINUTE, NOW, say, saying, snapshotOf, writeFire, writeHeater } from "../../store/made.ts";

const wanted = ({ person, place }: Snapshot) => ({ person_id: person.id, place_id: place.id });
const whole = (snapshot: Snapshot | null | undefined) => snapshot && { ...snapshot, versions: Reflect.get(snapshot, VERSIONS) };

export function many(store: Store): void {
  describe("many at once", () => {
    test("each is seen as by itself: fires, guides, shared heaters, reminders, places; who is gone is null", async () => {
      const ana = await say(store, "ana", (s) => ({ writes: [writeHeater(heaterOf(s, { upkeep: { swept_on: "2026-10-01" } }))] }));
      const fires = Array.from({ length: 70 }, (_, n) => writeFire(fireOf(ana, NOW - n * DAY, n % 3 ? 9.5 : undefined, { id: `a${n}` })));
      await say(store, "ana", () => ({ writes: fires }));
      await say(store, "ben", (s) => ({ writes: [writeHeater(heaterOf(s)), { write: "home", home: { ...s.home, house: { heat_loss_W_per_K: 180.5 } } }] }));
      await say(store, "ben", (s) => ({ writes: [{ write: "guide", guide: guideOf(s) }, writeFire(fireOf(s, NOW, 12))] }));
      await say(store, "cleo", (s) => ({ writes: [{ write: "join-heater", heater_id: ana.heaters[0]?.id ?? "", person_id: s.person.id }] }));
      await say(store, "dora", (s) => ({
        writes: ["one", "two"].map((id, n) => ({ write: "reminder", reminder: { id, person_id: s.person.id, place_id: s.place.id, what: id, due_at_ms: NOW - n } })),
      }));
      const people = await Promise.all(["ana", "ben", "cleo", "dora", "emil"].map((name) => snapshotOf(store, name)));
      const gone = { person_id: "nobody", place_id: people[0]?.place.id ?? "" };
      const found = await store.loadMany([...people.map(wanted), gone, ...people.map(wanted)], NOW);
      expect(found).toHaveLength(11);
      expect(found[5]).toBeNull();
      const one_by_one: Snapshot[] = [];
      for (const one of people) one_by_one.push(await store.load(one.person.id, one.place.id, NOW));
      expect(found.filter((one) => one !== null).map(whole)).toEqual([...one_by_one, ...one_by_one].map(whole));
      expect(one_by_one[0]?.fires).toHaveLength(60);
      expect(one_by_one[3]?.reminders).toHaveLength(2);
    });

    test("all are kept; one that is gone or changed meanwhile does not stop the others", async () => {
      const names = ["ana", "ben", "cleo", "dora"];
      for (const name of names) await say(store, name, (s) => ({ due: [dueOf(s, name, NOW)] }));
      const rows = await store.claimDue(NOW, MINUTE, 10);
      const snapshots = await store.loadMany(rows, NOW);
      const given = rows.map((row, n) => ({
        cause: { cause: "due" as const, row },
        snapshot: snapshots[n] as Snapshot,
        decided: decided({ answer: saying(row.key), due: [dueOf(snapshots[n] as Snapshot, `next of ${row.key}`, NOW + DAY)] }),
      }));
      await say(store, "ben", () => ({}));
      await say(store, "cleo", () => ({ cancel: ["cleo"] }));
      const outcomes = Object.fromEntries((await store.commitMany(given, NOW)).map(({ outcome }, n) => [rows[n]?.key, outcome]));
      expect(outcomes).toEqual({ ana: "committed", ben: "stale", cleo: "gone", dora: "committed" });
      const sent = await store.claimOutgoing(["lines"], NOW, MINUTE, 10);
      expect(sent.map(({ answer }) => answer.headline.args?.words).toSorted()).toEqual(["ana", "dora"]);
      expect((await store.claimDue(NOW + DAY, MINUTE, 10)).map(({ key }) => key).toSorted()).toEqual(["next of ana", "next of dora"]);
    });

    test("who shares a heater sees what became of its fire", async () => {
      const ana = await say(store, "ana", (s) => ({ writes: [writeHeater(heaterOf(s))], due: [dueOf(s, "ana", NOW)] }));
      const heater_id = ana.heaters[0]?.id ?? "";
      await say(store, "ben", (s) => ({ writes: [{ write: "join-heater", heater_id, person_id: s.person.id }], due: [dueOf(s, "ben", NOW)] }));
      const rows = await store.claimDue(NOW, MINUTE, 10);
      const snapshots = (await store.loadMany(rows, NOW)) as Snapshot[];
      const [first, second] = snapshots as [Snapshot, Snapshot];
      const outcomes = await store.commitMany(
        [
          { cause: { cause: "due", row: rows[0]! }, snapshot: first, decided: decided({ writes: [{ write: "guide", guide: guideOf(first) }] }) },
          { cause: { cause: "due", row: rows[1]! }, snapshot: second, decided: decided() },
        ],
        NOW,
      );
      expect(outcomes.map(({ outcome }) => outcome)).toEqual(["committed", "stale"]);
    });

    test("marks asked for at the same time are each their own", async () => {
      await say(store, "ana", (s) => ({ also_tell: ["a", "b", "c"].map((key) => ({ key, person_id: s.person.id, place_id: s.place.id, answer: saying(key) })) }));
      const rows = await store.claimOutgoing(["lines"], NOW, MINUTE, 10);
      const [a, b, c] = rows;
      if (!a || !b || !c) throw new Error("not claimed");
      const marks = await Promise.all([store.markAttempted(a, NOW), store.markAttempted({ ...b, lease: "another's" }, NOW), store.markAttempted(c, NOW, { maybe_repeat: true })]);
      expect(marks).toEqual([true, false, true]);
      await Promise.all([store.markSent(a, "event\u0000 1", NOW), store.markSent(c, null, NOW)]);
      expect(await store.nextDue(["lines"])).toBeNull();
      await store.dropOutgoing(b, "test");
    });
  });
}
