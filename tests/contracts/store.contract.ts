/** What every store promises, whatever database is behind it. Call it inside a test file, once for each. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Store, UnknownPerson } from "../../src/records/ports.ts";
import type { Guide, Snapshot } from "../../src/records/types.ts";
import { openStore } from "../../src/store/open.ts";
import type { Kind, Location } from "../store/locations.ts";
import { causeOf, DAY, decided, dueOf, fireOf, HOUR, heaterOf, MINUTE, message, NOW, say, saying, snapshotOf, writeFire, writeHeater } from "../store/made.ts";

const guideOf = (snapshot: Snapshot, state: Guide["state"] = {}): Guide => ({
  heater_id: snapshot.heaters[0]?.id ?? "", fire_id: `fire of ${snapshot.person.id}`, version: 0,
  watch_id: snapshot.person.id, place_id: snapshot.place.id, state,
});

export function storeContract(kind: Kind): void {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""} as a store`, () => {
    let at: Location;
    let store: Store;
    beforeEach(async () => {
      at = await kind.fresh();
      store = await openStore(at.location);
    });
    afterEach(async () => {
      await store.close();
      await at.remove();
    });
    const owner = (name: string) => say(store, name, (s) => ({ writes: [writeHeater(heaterOf(s))] }));

    describe("entering", () => {
      test("the same account and room are the same person and place", async () => {
        const { identity, place } = message("ana", "1");
        const first = await store.enter(identity, place, NOW);
        expect(await store.enter(identity, place, NOW + DAY)).toEqual(first);
        expect(await store.personByIdentity("lines", "ana")).toMatchObject({ id: first.person_id, created_at_ms: NOW, name: "ana" });
        expect(await store.personByIdentity("lines", "nobody")).toBeNull();
      });

      test("two accounts are two people; a new name is taken up", async () => {
        const ana = await store.enter(message("ana", "1").identity, message("ana", "1").place, NOW);
        const ben = await store.enter(message("ben", "1").identity, message("ben", "1").place, NOW);
        expect(ben.person_id).not.toBe(ana.person_id);
        await store.enter({ network: "lines", id: "ana", name: "Ana M." }, message("ana", "1").place, NOW);
        expect((await store.personByIdentity("lines", "ana"))?.name).toBe("Ana M.");
      });

      test("many entering at once make one person", async () => {
        const { identity, place } = message("ana", "1");
        const all = await Promise.all(Array.from({ length: 12 }, () => store.enter(identity, place, NOW)));
        expect(new Set(all.map(({ person_id }) => person_id)).size).toBe(1);
      });

      test("a private place that became a group's is one", async () => {
        const { identity, place } = message("ana", "1");
        const { person_id, place_id } = await store.enter(identity, place, NOW);
        expect((await store.load(person_id, place_id, NOW)).place).toMatchObject({ kind: "private" });
        await store.enter(identity, { ...place, kind: "group", name: "Oven friends" }, NOW);
        expect((await store.load(person_id, place_id, NOW)).place).toMatchObject({ kind: "group", name: "Oven friends" });
      });

      test.each(["", "a\u0000b", "\ud800", "'; drop table people; --", "ä".repeat(5000), "🔥\u202e"])("any words as account, name and text: %j", async (words) => {
        const odd = { identity: { network: "lines", id: words, name: words }, place: { network: "lines", id: words, kind: "private", encrypted: null } } as const;
        const { person_id, place_id } = await store.enter(odd.identity, odd.place, NOW);
        const before = await store.load(person_id, place_id, NOW);
        await store.commit(causeOf(message("x", words)), before, decided({ answer: saying(words), writes: [{ write: "talk", state: { words } }] }), NOW);
        expect((await store.load(person_id, place_id, NOW)).talk.state).toEqual({ words });
        expect((await store.inbox(`lines:x/${words}`))?.answer).toEqual(saying(words));
      });
    });

    describe("a message", () => {
      test("of somebody new has nothing to look at", async () => {
        const snapshot = await snapshotOf(store, "ana");
        expect(snapshot).toMatchObject({
          talk: { version: 0, state: {} }, heaters: [], fires: [], guide: null, reminders: [],
          totals: { fires: 0, load_kg: 0, since_sweep_kg: 0, since_sweep_fires: 0 }, home: { house: {}, wood: [], alarms: {}, weather: [] },
        });
        await expect(store.load("nobody", snapshot.place.id, NOW)).rejects.toThrow(UnknownPerson);
        await expect(store.load(snapshot.person.id, "nowhere", NOW)).rejects.toThrow(UnknownPerson);
      });

      test("everything it writes is there afterwards, as it was given", async () => {
        const home = { house: { floor_m2: 120 }, wood: [{ species: "birch", moisture_pct_wet: 16 }], alarms: { co: { present: true } }, weather: [] };
        const rules = [{ from: "builder", said_by: "builder", said_at_ms: NOW, max_load_kg: 14 }] as const;
        await say(store, "ana", ({ person, place }) => ({
          writes: [
            { write: "person", person: { ...person, facts: { units: "us", country: "FI" } } },
            writeHeater(heaterOf({ person }, { upkeep: { swept_on: "2026-09-01" }, rules })),
            { write: "home", home: { owner_id: person.id, ...home } },
            { write: "talk", state: { asked: "how dry is it?" } },
            { write: "reminder", reminder: { id: "r1", person_id: person.id, place_id: place.id, what: "test the alarm", due_at_ms: NOW + DAY, rule: "FREQ=WEEKLY" } },
          ],
        }));
        const after = await say(store, "ana", (s) => ({ writes: [writeFire(fireOf(s, NOW, 12.5)), { write: "guide", guide: guideOf(s, { step: "laid" }) }] }));
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
        const outcomes = await Promise.all(["first", "second", "third"].map((words) => store.commit(causeOf(one), before, decided({ answer: saying(words) }), NOW)));
        expect(outcomes.filter(({ outcome }) => outcome === "committed")).toHaveLength(1);
        expect(outcomes.filter(({ outcome }) => outcome === "stale")).toHaveLength(2);
        const kept = ["first", "second", "third"][outcomes.findIndex(({ outcome }) => outcome === "committed")] ?? "";
        expect(await store.inbox("lines:ana/once")).toEqual({ message_key: "lines:ana/once", answer: saying(kept) });
      });

      test("two messages decided on the same look: one is stale and leaves nothing", async () => {
        const before = await owner("ana");
        const write = (id: string) => store.commit(causeOf(message("ana", id)), before, decided({
          writes: [writeFire(fireOf(before, NOW, 10, { id })), { write: "talk", state: { id } }], due: [dueOf(before, id, NOW)],
        }), NOW);
        expect(await write("a")).toEqual({ outcome: "committed" });
        expect(await write("b")).toMatchObject({ outcome: "stale" });
        expect(await store.inbox("lines:ana/b")).toBeNull();
        expect((await snapshotOf(store, "ana")).fires.map(({ id }) => id)).toEqual(["a"]);
        expect((await store.claimDue(NOW, MINUTE, 10)).map(({ key }) => key)).toEqual(["a"]);
      });

      test("a commit that fails half way leaves nothing", async () => {
        const before = await owner("ana");
        const failing = store.commit(causeOf(message("ana", "f")), before, decided({
          writes: [writeFire(fireOf(before, NOW, 10)), { write: "join-heater", heater_id: "no such heater", person_id: before.person.id }],
        }), NOW);
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
          writes: [writeFire(fireOf(s, NOW, undefined)), writeFire(fireOf(s, NOW - DAY, 2.5)), { write: "delete-fire", fire_id: `fire at ${NOW - 2 * DAY}` }],
        }));
        expect(now.fires[0]?.facts.load_kg).toBeUndefined();
        expect(now.totals).toEqual({ fires: 79, load_kg: 772.5, since_sweep_fires: 5, since_sweep_kg: 32.5 });
      });
    });

    describe("a heater of several people", () => {
      async function household() {
        await say(store, "ana", ({ person }) => ({
          writes: [writeHeater(heaterOf({ person })), { write: "home", home: { owner_id: person.id, house: { floor_m2: 90 }, wood: [], alarms: {}, weather: [] } }],
        }));
        const ana = await snapshotOf(store, "ana");
        const heater_id = ana.heaters[0]?.id ?? "";
        const ben = await say(store, "ben", ({ person }) => ({ writes: [{ write: "join-heater", heater_id, person_id: person.id }] }), NOW + 1);
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
        const begin = (name: string, seen: Snapshot) => store.commit(causeOf(message(name, "light")), seen, decided({ writes: [{ write: "guide", guide: guideOf(seen) }] }), NOW);
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
        const set = (name: string, seen: Snapshot, facts: object) => store.commit(causeOf(message(name, JSON.stringify(facts))), seen, decided({
          writes: seen.heaters.map((heater) => writeHeater({ ...heater, facts: { ...heater.facts, ...facts } })),
        }), NOW);
        expect(await set("ana", ana, { grate: true })).toEqual({ outcome: "committed" });
        expect(await set("ben", ben, { wall_mm: 200 })).toMatchObject({ outcome: "stale" });
        expect(await set("ben", await snapshotOf(store, "ben"), { wall_mm: 200 })).toEqual({ outcome: "committed" });
        expect((await snapshotOf(store, "ana")).heaters[0]?.facts).toMatchObject({ grate: true, wall_mm: 200, max_load_kg: 16 });
      });
    });

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
        await say(store, "ana", (s) => ({ due: ["guide:1", "guide:2", "guidé", "guid", "guide:10", "other"].map((key) => dueOf(s, key, NOW)) }));
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
        const commits = await Promise.all([1, 2].map((n) => store.commit({ cause: "due", row }, seen, decided({ answer: saying(`${n}`) }), NOW)));
        expect(commits.map(({ outcome }) => outcome).toSorted()).toEqual(["committed", "gone"]);
        expect(await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).toMatchObject([{
          key: `k@${NOW}`, kind: "reminder", network: "lines", network_place_id: "ana's own", attempts: 0, maybe_repeat: false, unknown_since_ms: null,
        }]);
        expect(await store.nextDue(["lines"])).toBeNull();
      });

      test("a row that was moved or cancelled while it was worked on is gone", async () => {
        await say(store, "ana", (s) => ({ due: [dueOf(s, "moved", NOW), dueOf(s, "cancelled", NOW)] }));
        const rows = await store.claimDue(NOW, MINUTE, 10);
        await say(store, "ana", (s) => ({ due: [dueOf(s, "moved", NOW + HOUR)], cancel: ["cancelled"] }));
        for (const row of rows) expect(await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW)).toEqual({ outcome: "gone" });
        expect((await store.claimDue(NOW + HOUR, MINUTE, 10)).map(({ key }) => key)).toEqual(["moved"]);
      });

      test("no answer sends nothing and keeps what was decided; dropped and postponed rows", async () => {
        await say(store, "ana", (s) => ({ due: ["quiet", "drop", "wait"].map((key) => dueOf(s, key, NOW)) }));
        for (const row of await store.claimDue(NOW, MINUTE, 10)) {
          const seen = await snapshotOf(store, "ana");
          if (row.key === "quiet") await store.commit({ cause: "due", row }, seen, { ...decided({ due: [dueOf(seen, "quiet", NOW + 9 * HOUR)] }), answer: null }, NOW);
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
        expect(await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 1)).toMatchObject([{ key: `k@${NOW + DAY}`, useful_until_ms: NOW + DAY + HOUR }]);
      });
    });

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
        expect(claims.flat()).toMatchObject([{ key: "a", kind: "tell", answer: saying("a"), facts: { units: "us" }, useful_until_ms: NOW + 12 * HOUR }]);
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
        for (const row of await store.claimDue(NOW, MINUTE, 10)) await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW);
        const [row] = await store.claimOutgoing(["lines"], NOW, MINUTE, 10);
        if (!row) throw new Error("not claimed");
        await say(store, "ana", () => ({ cancel: ["k"] }));
        expect(await store.markAttempted(row, NOW)).toBe(false);
      });

      test("too late: back among the due rows, as it was", async () => {
        await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW, { kind: "guide-check-in", payload: { step: 3 } })] }));
        for (const row of await store.claimDue(NOW, MINUTE, 10)) await store.commit({ cause: "due", row }, await snapshotOf(store, "ana"), decided(), NOW);
        const [row] = await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 10);
        if (!row) throw new Error("not claimed");
        expect(await store.decideAgain(row, NOW + DAY)).toBe(true);
        expect(await store.decideAgain(row, NOW + DAY)).toBe(false);
        expect(await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 10)).toEqual([]);
        expect(await store.claimDue(NOW + DAY, MINUTE, 10)).toMatchObject([{ key: "k", kind: "guide-check-in", due_at_ms: NOW, useful_until_ms: NOW + HOUR, payload: { step: 3 } }]);
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

    describe("forgetting", () => {
      test("somebody alone: nothing is left, and the same message finds its answer", async () => {
        const ana = await owner("ana");
        await say(store, "ana", (s) => ({
          writes: [writeFire(fireOf(s, NOW, 9)), { write: "guide", guide: guideOf(s) }, { write: "home", home: { ...s.home, house: { floor_m2: 1 } } },
            { write: "reminder", reminder: { id: "r", person_id: s.person.id, place_id: s.place.id, what: "w", due_at_ms: NOW } }],
          due: [dueOf(s, "k", NOW)], also_tell: [{ key: "t", person_id: s.person.id, place_id: s.place.id, answer: saying("t") }],
        }));
        expect(await store.exportPerson(ana.person.id)).toMatchObject({
          person: { id: ana.person.id }, identities: [{ network_id: "ana" }], fires: [{ load_kg: 9 }], home: { house: { floor_m2: 1 } },
          guides: [{ watch_id: ana.person.id }], reminders: [{ what: "w" }], due: [{ key: "k" }], outgoing: [{ key: "t" }], talks: [{}], answered: [{}, {}],
        });
        const seen = await snapshotOf(store, "ana");
        const last = causeOf(message("ana", "forget me"));
        expect(await store.commit(last, seen, decided({ answer: saying("done"), writes: [{ write: "forget-person", person_id: seen.person.id }] }), NOW)).toEqual({ outcome: "committed" });
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
            writeHeater(heaterOf({ person }, {
              facts: { name: "Ana's bell", wall_mm: 200 }, rules: [{ from: "builder", said_by: "ana", said_at_ms: NOW, max_load_kg: 12 }],
            })),
            { write: "home", home: { owner_id: person.id, house: { floor_m2: 90 }, wood: [{ name: "behind the barn", basket_kg: 8 }], alarms: { co: { present: true, room: "hall" } }, weather: [] } },
          ],
        }));
        const heater_id = (await snapshotOf(store, "Ana")).heaters[0]?.id ?? "";
        for (const [name, at] of [["ben", NOW + 1], ["cleo", NOW + 2]] as const) {
          await say(store, name, ({ person }) => ({ writes: [{ write: "join-heater", heater_id, person_id: person.id }] }), at);
        }
        const ana = await say(store, "Ana", (s) => ({
          writes: [writeFire(fireOf(s, NOW, 9, { facts: { lit_at: "2026-11-25T18:00:00Z", load_kg: 9, note: "my secret note" } })), { write: "guide", guide: guideOf(s) }],
          due: [dueOf(s, "check-in", NOW, { kind: "guide-check-in" })],
        }));
        const told = causeOf(message("ben", "who lit it"));
        await store.commit(told, await snapshotOf(store, "ben"), decided({ answer: saying("Ana lit it") }), NOW);
        await say(store, "cleo", (s) => ({ writes: [{ write: "forget-person", person_id: ana.person.id }], answer: saying(s.person.id) }));

        const ben = await snapshotOf(store, "ben");
        expect(ben.heaters).toMatchObject([{ id: heater_id, owner_id: ben.person.id, facts: { wall_mm: 200 }, rules: [{ said_by: "forgotten", max_load_kg: 12 }] }]);
        expect(ben.heaters[0]?.member_ids).toHaveLength(2);
        expect(ben.heaters[0]?.facts.name).toBeUndefined();
        expect(ben.home).toEqual({ owner_id: ben.person.id, house: { floor_m2: 90 }, wood: [{ basket_kg: 8 }], alarms: { co: { present: true } }, weather: [] });
        expect(ben.fires).toMatchObject([{ person_id: "forgotten", facts: { load_kg: 9 } }]);
        expect(ben.fires[0]?.facts.note).toBeUndefined();
        expect(ben.guide).toMatchObject({ watch_id: ben.person.id, place_id: ben.place.id });
        expect(await store.claimDue(NOW, MINUTE, 10)).toMatchObject([{ key: "check-in", person_id: ben.person.id, place_id: ben.place.id }]);
        expect(await store.inbox("lines:ben/who lit it")).toBeNull();
        expect(JSON.stringify([ben, await store.exportPerson(ben.person.id)])).not.toMatch(/secret|barn|\bana\b/i);
      });

      test("what another's decision would send to somebody forgotten meanwhile is stale, then not decided", async () => {
        const ana = await owner("ana");
        const ben = await snapshotOf(store, "ben");
        await say(store, "cleo", () => ({ writes: [{ write: "forget-person", person_id: ana.person.id }] }));
        const telling = store.commit(causeOf(message("ben", "hand over")), ben, decided({
          also_tell: [{ key: "t", person_id: ana.person.id, place_id: ben.place.id, answer: saying("over to you") }],
        }), NOW);
        expect(await telling).toMatchObject({ outcome: "stale" });
      });
    });

    test("the latest instant and the earliest", async () => {
      expect(await store.lastInstant()).toBeNull();
      expect(await store.nextDue(["lines"])).toBeNull();
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW + DAY)] }), NOW);
      expect(await store.lastInstant()).toBe(NOW);
    });

    test("the check says that all is well", async () => {
      expect(await store.check()).toMatchObject({ ok: true });
    });
  });
}
