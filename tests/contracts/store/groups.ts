import { describe, expect, test } from "vitest";
import type { Card, GroupWanted } from "../../../src/records/group.ts";
import type { Store } from "../../../src/records/ports.ts";
import type { Decided, Snapshot } from "../../../src/records/types.ts";
import { type Answer, text } from "../../../src/answer.ts";
import { causeOf, DAY, decided, fireOf, heaterOf, HOUR, message, MINUTE, NOW, saying, writeFire, writeHeater } from "../../store/made.ts";

const room = (name: string, network = "lines") => ({ network, id: name, kind: "group" as const, name, encrypted: null });
let said = 0;

export function groups(store: Store): void {
  /** Somebody says something in a room, and what is decided of it. */
  async function inRoom(person: string, where: string, decide: (snapshot: Snapshot) => Partial<Decided<Answer>> = () => ({}), wanted: GroupWanted = {}, now_ms = NOW): Promise<Snapshot> {
    const one = { ...message(person, `in a room ${++said}`), place: room(where) };
    const { person_id, place_id } = await store.enter(one.identity, one.place, now_ms);
    const before = await store.load(person_id, place_id, now_ms, undefined, wanted);
    const commit = await store.commit(causeOf(one), before, decided(decide(before)), now_ms);
    if (commit.outcome !== "committed") throw new Error(JSON.stringify(commit));
    return store.load(person_id, place_id, now_ms, undefined, wanted);
  }
  const card = ({ person, groups = [] }: Snapshot, code: string, more: Partial<Card> = {}): Card => ({ group_id: groups[0]?.id ?? "", code, person_id: person.id, at_ms: NOW, withdrawn_at_ms: null, facts: { load_kg: 12.25 }, ...more });

  describe("groups", () => {
    test("a room is a group at once, of those who talk there; a private place is none", async () => {
      const first = await inRoom("ana", "valley");
      expect(first.groups).toMatchObject([{ name: "valley", places: [{ network: "lines", kind: "group" }] }]);
      await inRoom("ana", "hill");
      const { place, identity } = message("ana", "x");
      const { person_id, place_id } = await store.enter(identity, place, NOW);
      const alone = await store.load(person_id, place_id, NOW);
      expect(alone.groups?.map(({ name }) => name).sort()).toEqual(["hill", "valley"]);
      expect(alone.group).toBeUndefined();
      expect((await store.load(person_id, place_id, NOW, undefined, {})).group?.private_place).toBe(place_id);
    });

    test("a code links a place once; what that place kept by itself ends; bans hold in both", async () => {
      const hill = await inRoom("ben", "hill", (s) => ({ writes: [{ write: "group-list", list: { group_id: s.place.id, kind: "order", version: 0, opened_by: s.person.id, at_ms: NOW, facts: {} } }] }), {});
      const valley = await inRoom("ana", "valley", (s) => ({ writes: [{ write: "link-code", link: { code: "A2C3D4E6", group_id: s.place.id, place_id: s.place.id, made_by: s.person.id, ends_at_ms: NOW + HOUR } }] }));
      const seen = await inRoom("ben", "hill", () => ({}), { links: ["A2C3D4E6"] });
      expect(seen.group?.links).toMatchObject([{ code: "A2C3D4E6", group: { name: "valley" } }]);
      const link = { write: "link-place" as const, code: "A2C3D4E6", place_id: hill.place.id, group_id: valley.place.id };
      const linked = await inRoom("ben", "hill", () => ({ writes: [link] }), { links: ["A2C3D4E6"] });
      expect(linked.groups).toMatchObject([{ id: valley.place.id, name: "valley" }]);
      expect(linked.groups?.[0]?.places).toHaveLength(2);
      expect(linked.group).toMatchObject({ lists: [], links: [] });
      await expect(inRoom("eve", "elsewhere", ({ place }) => ({ writes: [{ ...link, place_id: place.id }] }))).rejects.toThrow(/stale/);
      await inRoom("ana", "valley", ({ place, person }) => ({ writes: [{ write: "group-rule", place_id: place.id, rule: { from: "group", said_by: person.id, said_at_ms: NOW, max_load_kg: 7 } }] }));
      expect((await inRoom("ben", "hill")).group_rules).toMatchObject([{ max_load_kg: 7 }]);
      await inRoom("ben", "hill", ({ place }) => ({ writes: [{ write: "group-rule", place_id: place.id, rule: null }] }));
      expect((await inRoom("ana", "valley")).group_rules).toEqual([]);
      await inRoom("ben", "hill", ({ place }) => ({ writes: [{ write: "unlink-place", place_id: place.id }] }));
      expect((await inRoom("ben", "hill")).groups?.[0]?.places).toHaveLength(1);
    });

    test("a card is seen by its group only; its code is given once; withdrawn, nothing of it is left anywhere", async () => {
      const wanted = { codes: ["K7M2"] };
      const before = await inRoom("ana", "valley", (s) => ({
        writes: [{ write: "card", card: card(s, "K7M2") }],
        also_tell: [{ key: `card:${s.groups?.[0]?.id}:K7M2:x`, person_id: s.person.id, place_id: s.place.id, answer: saying("12.25 kg") }],
      }), wanted);
      expect(before.group).toMatchObject({ cards: [{ code: "K7M2", facts: { load_kg: 12.25 } }], own: [{ code: "K7M2" }] });
      expect([...(before.group?.used.values() ?? [])]).toEqual([["K7M2"]]);
      expect((await inRoom("eve", "hill", () => ({}), wanted)).group?.cards).toEqual([]);
      await expect(inRoom("ben", "valley", (s) => ({ writes: [{ write: "card", card: card(s, "K7M2") }] }))).rejects.toThrow(/stale/);
      const ben = await inRoom("ben", "valley", () => ({ answer: { ...saying(""), headline: text("beside", { code: "K7M2", load: "12.25 kg" }) } }));
      const after = await inRoom("ana", "valley", ({ groups: [group] = [] }) => ({ writes: [{ write: "withdraw-card", group_id: group?.id ?? "", code: "K7M2" }] }), wanted, NOW + MINUTE);
      expect(after.group?.cards).toMatchObject([{ code: "K7M2", withdrawn_at_ms: NOW + MINUTE, facts: {} }]);
      expect(after.group?.own).toEqual([]);
      expect(await store.claimOutgoing(["lines"], NOW + DAY, MINUTE, 50)).toEqual([]);
      for (const { person } of [after, ben]) expect(JSON.stringify(await store.exportPerson(person.id))).not.toContain("12.25");
    });

    test("lists move on one at a time; lines are everybody's own, and go with the list", async () => {
      const open = (version: number, facts = {}) => ({ writes: [{ write: "group-list" as const, list: { group_id: "", kind: "meter" as const, version, opened_by: "", at_ms: NOW, facts } }] });
      const ours = (s: Snapshot, { writes: [one] }: ReturnType<typeof open>) => ({ writes: [{ ...one!, list: { ...one!.list, group_id: s.place.id, opened_by: s.person.id } }] });
      await inRoom("ana", "valley", (s) => ours(s, open(0)));
      await expect(inRoom("ben", "valley", (s) => ours(s, open(0)))).rejects.toThrow(/stale/);
      await inRoom("ben", "valley", (s) => ours(s, open(1, { n: 2 })));
      await expect(inRoom("ana", "valley", (s) => ours(s, open(1)))).rejects.toThrow(/stale/);
      for (const who of ["ana", "ben"]) await inRoom(who, "valley", (s) => ({ writes: [{ write: "group-entry", entry: { group_id: s.place.id, kind: "meter", person_id: s.person.id, at_ms: NOW, facts: { who } } }] }));
      const seen = await inRoom("ana", "valley", () => ({}), {});
      expect(seen.group?.lists).toMatchObject([{ kind: "meter", version: 2, facts: { n: 2 } }]);
      expect(seen.group?.entries.map(({ name }) => name).sort()).toEqual(["ana", "ben"]);
      await inRoom("ana", "valley", (s) => ({ writes: [{ write: "drop-entry", group_id: s.place.id, kind: "meter", person_id: s.person.id }] }));
      await inRoom("ana", "valley", (s) => ({ writes: [{ write: "close-list", group_id: s.place.id, kind: "meter", version: 2 }] }));
      expect((await inRoom("ana", "valley", () => ({}), {})).group).toMatchObject({ lists: [], entries: [] });
    });

    test("a winter's week is frozen once, of those who took part in it, a heater counted once", async () => {
      const monday = Date.parse("2026-11-30T00:00:00Z");
      for (const [who, from_week, until_week] of [["ana", "2026-W49", undefined], ["ben", "2026-W50", undefined], ["cid", "2026-W48", "2026-W49"]] as const) {
        await inRoom(who, "valley", (s) => ({
          writes: [
            writeHeater(heaterOf(s)), writeFire({ ...fireOf(s, monday + HOUR, 9), id: `fire of ${who}`, heater_id: `heater of ${s.person.id}` }),
            { write: "winter-member", member: { group_id: s.place.id, person_id: s.person.id, from_week, ...(until_week ? { until_week } : {}) } },
          ],
        }));
      }
      await inRoom("twin", "valley", (s) => ({ writes: [{ write: "winter-member", member: { group_id: s.place.id, person_id: s.person.id, from_week: "2026-W49" } }] }));
      const group_id = (await inRoom("ana", "valley")).place.id;
      const ana = await inRoom("ana", "valley");
      await inRoom("twin", "valley", (s) => ({ writes: [{ write: "join-heater", heater_id: ana.heaters[0]?.id ?? "", person_id: s.person.id }] }));
      const seen = await inRoom("ana", "valley", () => ({}), { winter_of: group_id }, monday + 8 * DAY);
      expect(seen.group?.freezing).toMatchObject({ week: "2026-W49", members: 3 });
      expect(seen.group?.freezing?.heaters.map(({ fires }) => fires.map(({ facts }) => facts.load_kg))).toEqual([[9]]);
      for (const facts of [{ n: 1 }, { n: 2 }]) await inRoom("ana", "valley", () => ({ writes: [{ write: "winter-week", week: { group_id, week: "2026-W49", facts } }] }));
      expect((await inRoom("ana", "valley", () => ({}), {})).group?.weeks).toMatchObject([{ week: "2026-W49", facts: { n: 1 } }]);
    });

    test("somebody forgotten leaves no card, line or part behind; the group's own rows pass to another", async () => {
      const week = { key: "winter:valley:w", kind: "group-week" as const, due_at_ms: NOW + DAY, useful_until_ms: NOW + 2 * DAY, payload: {} };
      await inRoom("ben", "valley");
      await inRoom("ana", "valley", (s) => ({
        writes: [
          { write: "card", card: card(s, "K7M2") }, { write: "group-list", list: { group_id: s.place.id, kind: "sweep", version: 0, opened_by: s.person.id, at_ms: NOW, facts: {} } },
          { write: "group-entry", entry: { group_id: s.place.id, kind: "sweep", person_id: s.person.id, at_ms: NOW, facts: {} } }, { write: "winter-member", member: { group_id: s.place.id, person_id: s.person.id, from_week: "2026-W49" } },
        ],
        due: [{ ...week, person_id: s.person.id, place_id: s.place.id }],
      }));
      const { person } = await inRoom("ana", "valley");
      const one = { ...message("ana", "forget me, in the room"), place: room("valley") };
      const { person_id, place_id } = await store.enter(one.identity, one.place, NOW);
      const last = await store.load(person_id, place_id, NOW);
      const told = { key: "card-gone:x", person_id, place_id, answer: saying("gone") };
      expect(await store.commit(causeOf(one), last, decided({ writes: [{ write: "forget-person", person_id: person.id }], also_tell: [told] }), NOW)).toEqual({ outcome: "committed" });
      const ben = await inRoom("ben", "valley", () => ({}), { codes: ["K7M2"] });
      expect(ben.group?.cards).toMatchObject([{ person_id: null, facts: {} }]);
      expect(ben.group).toMatchObject({ entries: [], lists: [{ opened_by: "forgotten" }] });
      expect((await store.claimDue(NOW + DAY, MINUTE, 10)).map(({ key, person_id: whose }) => [key, whose])).toEqual([["winter:valley:w", ben.person.id]]);
      expect((await store.claimOutgoing(["lines"], NOW, MINUTE, 10)).map(({ key, person_id: whose }) => [key, whose])).toEqual([["card-gone:x", ben.person.id]]);
    });
  });
}
