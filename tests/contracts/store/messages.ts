import { describe, expect, test } from "vitest";
import { type Store, UnknownPerson } from "../../../src/records/ports.ts";
import {
  causeOf,
  DAY,
  decided,
  dueOf,
  fireOf,
  heaterOf,
  MINUTE,
  message,
  NOW,
  say,
  saying,
  snapshotOf,
  writeFire,
  writeHeater,
  guideOf,
  owner,
} from "../../store/made.ts";

export function messages(store: Store): void {
  describe("a message", () => {
    test("of somebody new has nothing to look at", async () => {
      const snapshot = await snapshotOf(store, "ana");
      expect(snapshot).toMatchObject({
        talk: { version: 0, state: {} },
        heaters: [],
        fires: [],
        guide: null,
        reminders: [],
        totals: { fires: 0, load_kg: 0, since_sweep_kg: 0, since_sweep_fires: 0 },
        home: { house: {}, wood: [], alarms: {}, weather: [] },
      });
      await expect(store.load("nobody", snapshot.place.id, NOW)).rejects.toThrow(UnknownPerson);
      await expect(store.load(snapshot.person.id, "nowhere", NOW)).rejects.toThrow(UnknownPerson);
    });

    test("everything it writes is there afterwards, as it was given", async () => {
      const home = {
        house: { floor_m2: 120 },
        wood: [{ species: "birch", moisture_pct_wet: 16 }],
        alarms: { co: { present: true } },
        weather: [],
      };
      const rules = [{ from: "builder", said_by: "builder", said_at_ms: NOW, max_load_kg: 14 }] as const;
      await say(store, "ana", ({ person, place }) => ({
        writes: [
          { write: "person", person: { ...person, facts: { units: "us", country: "FI" } } },
          writeHeater(heaterOf({ person }, { upkeep: { swept_on: "2026-09-01" }, rules })),
          { write: "home", home: { owner_id: person.id, ...home } },
          { write: "talk", state: { asked: "how dry is it?" } },
          {
            write: "reminder",
            reminder: {
              id: "r1",
              person_id: person.id,
              place_id: place.id,
              what: "test the alarm",
              due_at_ms: NOW + DAY,
              rule: "FREQ=WEEKLY",
            },
          },
        ],
      }));
      const after = await say(store, "ana", (s) => ({
        writes: [writeFire(fireOf(s, NOW, 12.5)), { write: "guide", guide: guideOf(s, { step: "laid" }) }],
      }));
      expect(after).toMatchObject({
        person: { name: "ana", facts: { units: "us", country: "FI" } },
        home: { owner_id: after.person.id, ...home },
        talk: { version: 2, updated_at_ms: NOW, state: { asked: "how dry is it?" } },
        fires: [{ lit_at_ms: NOW, facts: { load_kg: 12.5 } }],
        guide: { version: 1, watch_id: after.person.id, state: { step: "laid" } },
        reminders: [{ id: "r1", what: "test the alarm", rule: "FREQ=WEEKLY", due_at_ms: NOW + DAY }],
      });
      expect(after.heaters).toEqual([heaterOf(after, { upkeep: { swept_on: "2026-09-01" }, rules })]);
    });

    test("the same message twice has one answer, even at the same time", async () => {
      const one = message("ana", "once");
      const before = await snapshotOf(store, "ana");
      expect(await store.inbox("lines:ana/once")).toBeNull();
      const outcomes = await Promise.all(
        ["first", "second", "third"].map((words) => store.commit(causeOf(one), before, decided({ answer: saying(words) }), NOW)),
      );
      expect(outcomes.filter(({ outcome }) => outcome === "committed")).toHaveLength(1);
      expect(outcomes.filter(({ outcome }) => outcome === "stale")).toHaveLength(2);
      const kept = ["first", "second", "third"][outcomes.findIndex(({ outcome }) => outcome === "committed")] ?? "";
      expect(await store.inbox("lines:ana/once")).toEqual({ message_key: "lines:ana/once", answer: saying(kept) });
    });

    test("two messages decided on the same look: one is stale and leaves nothing", async () => {
      const before = await owner(store, "ana");
      const write = (id: string) =>
        store.commit(
          causeOf(message("ana", id)),
          before,
          decided({
            writes: [writeFire(fireOf(before, NOW, 10, { id })), { write: "talk", state: { id } }],
            due: [dueOf(before, id, NOW)],
          }),
          NOW,
        );
      expect(await write("a")).toEqual({ outcome: "committed" });
      expect(await write("b")).toMatchObject({ outcome: "stale" });
      expect(await store.inbox("lines:ana/b")).toBeNull();
      expect((await snapshotOf(store, "ana")).fires.map(({ id }) => id)).toEqual(["a"]);
      expect((await store.claimDue(NOW, MINUTE, 10)).map(({ key }) => key)).toEqual(["a"]);
    });

    test("a commit that fails half way leaves nothing", async () => {
      const before = await owner(store, "ana");
      const failing = store.commit(
        causeOf(message("ana", "f")),
        before,
        decided({
          writes: [writeFire(fireOf(before, NOW, 10)), { write: "join-heater", heater_id: "no such heater", person_id: before.person.id }],
        }),
        NOW,
      );
      await expect(failing).rejects.toThrow(/no heater/);
      expect(await snapshotOf(store, "ana")).toEqual(before);
    });

    test("a fire is corrected and deleted by its id; totals count all, and since the sweep", async () => {
      await say(store, "ana", (s) => ({ writes: [writeHeater(heaterOf(s, { upkeep: { swept_on: "2026-11-20" } }))] }));
      const days = Array.from({ length: 80 }, (_, day) => NOW - day * DAY);
      let now = await say(store, "ana", (s) => ({ writes: days.map((at) => writeFire(fireOf(s, at, 10))) }));
      expect(now.fires).toHaveLength(60);
      expect(now.fires[0]?.lit_at_ms).toBe(NOW);
      expect(now.fires[59]?.lit_at_ms).toBe(NOW - 59 * DAY);
      expect(now.totals).toEqual({ fires: 80, load_kg: 800, since_sweep_fires: 6, since_sweep_kg: 60 });
      now = await say(store, "ana", (s) => ({
        writes: [
          writeFire(fireOf(s, NOW, undefined)),
          writeFire(fireOf(s, NOW - DAY, 2.5)),
          { write: "delete-fire", fire_id: `fire at ${NOW - 2 * DAY}` },
        ],
      }));
      expect(now.fires[0]?.facts.load_kg).toBeUndefined();
      expect(now.totals).toEqual({ fires: 79, load_kg: 772.5, since_sweep_fires: 5, since_sweep_kg: 32.5 });
    });
  });
}
