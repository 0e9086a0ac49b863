import { describe, expect, test } from "vitest";
import type { Store } from "../../../src/records/ports.ts";
import type { Snapshot } from "../../../src/records/types.ts";
import { causeOf, decided, fireOf, heaterOf, message, NOW, say, snapshotOf, writeFire, writeHeater, guideOf } from "../../store/made.ts";

export function household(store: Store): void {
  describe("a heater of several people", () => {
    async function household() {
      await say(store, "ana", ({ person }) => ({
        writes: [
          writeHeater(heaterOf({ person })),
          { write: "home", home: { owner_id: person.id, house: { floor_m2: 90 }, wood: [], alarms: {}, weather: [] } },
        ],
      }));
      const ana = await snapshotOf(store, "ana");
      const heater_id = ana.heaters[0]?.id ?? "";
      const ben = await say(
        store,
        "ben",
        ({ person }) => ({ writes: [{ write: "join-heater", heater_id, person_id: person.id }] }),
        NOW + 1,
      );
      return { ana: await snapshotOf(store, "ana"), ben, heater_id };
    }

    test("whoever joined sees heater, home, fires and names", async () => {
      const { ana, ben, heater_id } = await household();
      expect(ben.heaters.map(({ id }) => id)).toEqual([heater_id]);
      expect(ben.heaters[0]?.member_ids).toEqual([ana.person.id, ben.person.id]);
      expect(ben.home).toMatchObject({ owner_id: ana.person.id, house: { floor_m2: 90 } });
      expect(ben.names).toEqual(new Map([[ana.person.id, "ana"]]));
      expect(ana.names).toEqual(new Map([[ben.person.id, "ben"]]));
      await say(store, "ana", (s) => ({ writes: [writeFire(fireOf(s, NOW, 9))] }));
      expect((await snapshotOf(store, "ben")).fires).toHaveLength(1);
      expect(await store.heatersOf(ben.person.id)).toEqual([heater_id]);
    });

    test("their own heater comes before a shared one, the chosen one before both", async () => {
      const { heater_id } = await household();
      let ben = await say(store, "ben", (s) => ({ writes: [writeHeater(heaterOf(s))] }));
      expect(ben.heaters.map(({ id }) => id)).toEqual([`heater of ${ben.person.id}`, heater_id]);
      ben = await say(store, "ben", ({ person }) => ({ writes: [{ write: "person", person: { ...person, heater_id } }] }));
      expect(ben.heaters.map(({ id }) => id)).toEqual([heater_id, `heater of ${ben.person.id}`]);
      const named = await store.load(ben.person.id, ben.place.id, NOW, `heater of ${ben.person.id}`);
      expect(named.heaters[0]?.id).toBe(`heater of ${ben.person.id}`);
    });

    test("two of them begin a fire at the same time: one guide, the other sees it", async () => {
      const { ana, ben } = await household();
      const begin = (name: string, seen: Snapshot) =>
        store.commit(causeOf(message(name, "light")), seen, decided({ writes: [{ write: "guide", guide: guideOf(seen) }] }), NOW);
      const outcomes = (await Promise.all([begin("ana", ana), begin("ben", ben)])).map(({ outcome }) => outcome);
      expect(outcomes.toSorted()).toEqual(["committed", "stale"]);
      expect((await snapshotOf(store, "ben")).guide).toEqual((await snapshotOf(store, "ana")).guide);
    });

    test("a decision on a guide that went on, ended, or began anew is stale", async () => {
      await household();
      await say(store, "ana", (s) => ({ writes: [{ write: "guide", guide: guideOf(s, { step: 1 }) }] }));
      const ben = await snapshotOf(store, "ben");
      const late = (seen: Snapshot, id: string) => store.commit(causeOf(message("ben", id)), seen, decided(), NOW);
      await say(store, "ana", (s) => ({ writes: [{ write: "guide", guide: guideOf(s, { step: 2 }) }] }));
      expect(await late(ben, "went on")).toMatchObject({ outcome: "stale" });
      await say(store, "ana", (s) => ({ writes: [{ write: "end-guide", heater_id: s.heaters[0]?.id ?? "" }] }));
      expect(await late(ben, "ended")).toMatchObject({ outcome: "stale" });
      await say(store, "ana", (s) => ({ writes: [{ write: "guide", guide: { ...guideOf(s), fire_id: "another fire" } }] }));
      expect(await late(ben, "anew")).toMatchObject({ outcome: "stale" });
      expect(await late(await snapshotOf(store, "ben"), "now")).toEqual({ outcome: "committed" });
    });

    test("two of them change the same record: neither change is lost", async () => {
      const { ana, ben } = await household();
      const set = (name: string, seen: Snapshot, facts: object) =>
        store.commit(
          causeOf(message(name, JSON.stringify(facts))),
          seen,
          decided({
            writes: seen.heaters.map((heater) => writeHeater({ ...heater, facts: { ...heater.facts, ...facts } })),
          }),
          NOW,
        );
      expect(await set("ana", ana, { grate: true })).toEqual({ outcome: "committed" });
      expect(await set("ben", ben, { wall_mm: 200 })).toMatchObject({ outcome: "stale" });
      expect(await set("ben", await snapshotOf(store, "ben"), { wall_mm: 200 })).toEqual({ outcome: "committed" });
      expect((await snapshotOf(store, "ana")).heaters[0]?.facts).toMatchObject({ grate: true, wall_mm: 200, max_load_kg: 16 });
    });
  });
}
