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

export function forgetting(store: Store): void {
  describe("forgetting", () => {
    test("somebody alone: nothing is left, and the same message finds its answer", async () => {
      const ana = await owner(store, "ana");
      await say(store, "ana", (s) => ({
        writes: [
          writeFire(fireOf(s, NOW, 9)),
          { write: "guide", guide: guideOf(s) },
          { write: "home", home: { ...s.home, house: { floor_m2: 1 } } },
          { write: "reminder", reminder: { id: "r", person_id: s.person.id, place_id: s.place.id, what: "w", due_at_ms: NOW } },
        ],
        due: [dueOf(s, "k", NOW)],
        also_tell: [{ key: "t", person_id: s.person.id, place_id: s.place.id, answer: saying("t") }],
      }));
      expect(await store.exportPerson(ana.person.id)).toMatchObject({
        person: { id: ana.person.id },
        identities: [{ network_id: "ana" }],
        fires: [{ load_kg: 9 }],
        home: { house: { floor_m2: 1 } },
        guides: [{ watch_id: ana.person.id }],
        reminders: [{ what: "w" }],
        due: [{ key: "k" }],
        outgoing: [{ key: "t" }],
        talks: [{}],
        answered: [{}, {}],
      });
      const seen = await snapshotOf(store, "ana");
      const last = causeOf(message("ana", "forget me"));
      expect(
        await store.commit(
          last,
          seen,
          decided({ answer: saying("done"), writes: [{ write: "forget-person", person_id: seen.person.id }] }),
          NOW,
        ),
      ).toEqual({ outcome: "committed" });
      await expect(store.exportPerson(ana.person.id)).rejects.toThrow(UnknownPerson);
      expect(await store.personByIdentity("lines", "ana")).toBeNull();
      expect(await store.claimDue(NOW, MINUTE, 10)).toEqual([]);
      expect(await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).toEqual([]);
      expect((await store.inbox("lines:ana/forget me"))?.answer).toEqual(saying("done"));
      const anew = await snapshotOf(store, "ana", NOW + DAY);
      expect(anew).toMatchObject({ person: { created_at_ms: NOW + DAY, facts: {} }, talk: { version: 0 }, heaters: [], fires: [] });
    });

    test("an owner of a shared heater: it passes on with its fires, without name and words", async () => {
      await say(store, "Ana", ({ person }) => ({
        writes: [
          writeHeater(
            heaterOf(
              { person },
              {
                facts: { name: "Ana's bell", wall_mm: 200 },
                rules: [{ from: "builder", said_by: "ana", said_at_ms: NOW, max_load_kg: 12 }],
              },
            ),
          ),
          {
            write: "home",
            home: {
              owner_id: person.id,
              house: { floor_m2: 90 },
              wood: [{ name: "behind the barn", basket_kg: 8 }],
              alarms: { co: { present: true, room: "hall" } },
              weather: [],
            },
          },
        ],
      }));
      const heater_id = (await snapshotOf(store, "Ana")).heaters[0]?.id ?? "";
      for (const [name, at] of [
        ["ben", NOW + 1],
        ["cleo", NOW + 2],
      ] as const) {
        await say(store, name, ({ person }) => ({ writes: [{ write: "join-heater", heater_id, person_id: person.id }] }), at);
      }
      const ana = await say(store, "Ana", (s) => ({
        writes: [
          writeFire(fireOf(s, NOW, 9, { facts: { lit_at: "2026-11-25T18:00:00Z", load_kg: 9, note: "my secret note" } })),
          { write: "guide", guide: guideOf(s) },
        ],
        due: [dueOf(s, "check-in", NOW, { kind: "guide-check-in" })],
      }));
      const told = causeOf(message("ben", "who lit it"));
      await store.commit(told, await snapshotOf(store, "ben"), decided({ answer: saying("Ana lit it") }), NOW);
      await say(store, "cleo", (s) => ({ writes: [{ write: "forget-person", person_id: ana.person.id }], answer: saying(s.person.id) }));

      const ben = await snapshotOf(store, "ben");
      expect(ben.heaters).toMatchObject([
        { id: heater_id, owner_id: ben.person.id, facts: { wall_mm: 200 }, rules: [{ said_by: "forgotten", max_load_kg: 12 }] },
      ]);
      expect(ben.heaters[0]?.member_ids).toHaveLength(2);
      expect(ben.heaters[0]?.facts.name).toBeUndefined();
      expect(ben.home).toEqual({
        owner_id: ben.person.id,
        house: { floor_m2: 90 },
        wood: [{ basket_kg: 8 }],
        alarms: { co: { present: true } },
        weather: [],
      });
      expect(ben.fires).toMatchObject([{ person_id: "forgotten", facts: { load_kg: 9 } }]);
      expect(ben.fires[0]?.facts.note).toBeUndefined();
      expect(ben.guide).toMatchObject({ watch_id: ben.person.id, place_id: ben.place.id });
      expect(await store.claimDue(NOW, MINUTE, 10)).toMatchObject([{ key: "check-in", person_id: ben.person.id, place_id: ben.place.id }]);
      expect(await store.inbox("lines:ben/who lit it")).toBeNull();
      expect(JSON.stringify([ben, await store.exportPerson(ben.person.id)])).not.toMatch(/secret|barn|\bana\b/i);
    });

    test("what another's decision would send to somebody forgotten meanwhile is stale, then not decided", async () => {
      const ana = await owner(store, "ana");
      const ben = await snapshotOf(store, "ben");
      await say(store, "cleo", () => ({ writes: [{ write: "forget-person", person_id: ana.person.id }] }));
      const telling = store.commit(
        causeOf(message("ben", "hand over")),
        ben,
        decided({
          also_tell: [{ key: "t", person_id: ana.person.id, place_id: ben.place.id, answer: saying("over to you") }],
        }),
        NOW,
      );
      expect(await telling).toMatchObject({ outcome: "stale" });
    });
  });
}
