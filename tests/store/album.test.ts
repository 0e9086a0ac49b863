/** Pictures and group rules in both stores: kept, listed, copied, forgotten. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Store } from "../../src/records/ports.ts";
import type { AlbumEntry, HeaterRule, Snapshot } from "../../src/records/types.ts";
import { openStore } from "../../src/store/open.ts";
import { FILE, type Location, MEMORY, POSTGRES } from "./locations.ts";
import { causeOf, decided, heaterOf, HOUR, message, NOW, owner, say, snapshotOf } from "./made.ts";

const BYTES = new Uint8Array([0, 255, 0x89, 13, 10, 0, 39]);
const entry = (s: Snapshot, n: number, more: Partial<AlbumEntry> = {}): AlbumEntry => ({ id: `pic-${s.person.id}-${n}`, person_id: s.person.id, heater_id: s.heaters[0]?.id ?? null, at_ms: NOW + n * HOUR, what: "crack", media_type: "image/png", ...more });
const rule = (s: Snapshot): HeaterRule => ({ from: "group", said_by: s.person.id, said_at_ms: NOW, no_fire: { from: "2026-11-25T00:00:00Z", to: "2026-11-28T00:00:00Z" } });

for (const kind of [FILE, MEMORY, POSTGRES]) {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""}`, () => {
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
    const forget = async (person: string): Promise<void> => {
      const seen = await snapshotOf(store, person);
      await store.commit(causeOf(message(person, "forget me")), seen, decided({ writes: [{ write: "forget-person", person_id: seen.person.id }] }), NOW);
    };

    test("a picture is listed without its bytes and copied with them, newest first", async () => {
      const ana = await owner(store, "ana");
      await say(store, "ana", (s) => ({ writes: [1, 2].map((n) => ({ write: "picture", picture: entry(s, n, { words: `day ${n}` }), bytes: BYTES })) }));
      expect((await snapshotOf(store, "ana")).album).toMatchObject([{ words: "day 2", what: "crack" }, { words: "day 1" }]);
      const { album } = (await store.exportPerson(ana.person.id)) as { album: { base64: string }[] };
      expect(album.map(({ base64 }) => base64)).toEqual([1, 2].map(() => Buffer.from(BYTES).toString("base64")));
    });
    test("the picture itself: for whoever took it or fires its heater, for nobody else, and not once it is deleted", async () => {
      const ana = await owner(store, "ana");
      await say(store, "ben", () => ({}));
      const ben = await snapshotOf(store, "ben");
      await say(store, "ana", (s) => ({ writes: [{ write: "picture", picture: entry(s, 1), bytes: BYTES }, { write: "picture-width", picture_id: entry(s, 1).id, width_mm: 0.5 }] }));
      const { id } = entry(ana, 1);
      expect(await store.photo(id, ana.person.id)).toEqual({ media_type: "image/png", bytes: BYTES });
      expect((await snapshotOf(store, "ana")).album).toMatchObject([{ width_mm: 0.5 }]);
      expect(await store.photo(id, ben.person.id)).toBeNull();
      await say(store, "ana", (s) => ({ writes: [{ write: "join-heater", heater_id: s.heaters[0]?.id ?? "", person_id: ben.person.id }] }));
      expect(await store.photo(id, ben.person.id)).not.toBeNull();
      // another's width is not theirs to change
      await say(store, "ben", () => ({ writes: [{ write: "picture-width", picture_id: id, width_mm: 9 }] }));
      expect((await snapshotOf(store, "ana")).album).toMatchObject([{ width_mm: 0.5 }]);
      await forget("ana");
      expect(await store.photo(id, ana.person.id)).toBeNull();
      expect(await store.photo(id, ben.person.id)).toBeNull();
    });
    test("sixty of one person, the oldest goes", async () => {
      await owner(store, "ana");
      await say(store, "ana", (s) => ({ writes: Array.from({ length: 62 }, (_, n) => ({ write: "picture" as const, picture: entry(s, n), bytes: BYTES })) }));
      const { album = [] } = await snapshotOf(store, "ana");
      expect([album.length, album.at(-1)?.at_ms]).toEqual([60, NOW + 2 * HOUR]);
    });
    test("deleted by whoever sent it, and by nobody else", async () => {
      const ana = await owner(store, "ana");
      await say(store, "ana", (s) => ({ writes: [{ write: "picture", picture: entry(s, 1), bytes: BYTES }] }));
      await say(store, "ben", () => ({ writes: [{ write: "delete-picture", picture_id: `pic-${ana.person.id}-1` }] }));
      expect((await snapshotOf(store, "ana")).album).toHaveLength(1);
      await say(store, "ana", () => ({ writes: [{ write: "delete-picture", picture_id: `pic-${ana.person.id}-1` }] }));
      expect((await snapshotOf(store, "ana")).album).toEqual([]);
    });
    test("pictures go with the person; the group's ban stays without the name", async () => {
      await owner(store, "ana");
      await say(store, "ben", () => ({}));
      await say(store, "ana", (s) => ({ writes: [{ write: "picture", picture: entry(s, 1), bytes: BYTES }] }));
      const seen = await snapshotOf(store, "ana");
      const group = { network: "lines", id: "group:valley", kind: "group" as const, name: "valley", encrypted: null };
      for (const person of ["ana", "ben"]) {
        const { person_id, place_id } = await store.enter(message(person, "g").identity, group, NOW);
        const there = await store.load(person_id, place_id, NOW);
        await store.commit(causeOf(message(person, "g", { place: group })), there, decided(person === "ana" ? { writes: [{ write: "group-rule", place_id, rule: rule(seen) }] } : {}), NOW);
      }
      expect((await snapshotOf(store, "ben")).group_rules).toMatchObject([{ from: "group", said_by: seen.person.id }]);
      expect(await store.exportPerson(seen.person.id)).toMatchObject({ rules_for_groups: [{ from: "group" }], album: [{ what: "crack" }] });
      await forget("ana");
      expect((await snapshotOf(store, "ben")).group_rules).toMatchObject([{ from: "group", said_by: "forgotten" }]);
      expect((await snapshotOf(store, "ana")).album).toEqual([]);
    });
    test("a season's fires from an instant on", async () => {
      await owner(store, "ana");
      const { heaters } = await snapshotOf(store, "ana");
      const id = heaters[0]?.id ?? heaterOf(await snapshotOf(store, "ana")).id;
      await say(store, "ana", (s) => ({ writes: Array.from({ length: 80 }, (_, n) => ({ write: "fire" as const, fire: { id: `f${n}`, heater_id: id, person_id: s.person.id, lit_at_ms: NOW - n * HOUR, facts: { lit_at: new Date(NOW - n * HOUR).toISOString() } } })) }));
      expect(await store.firesSince(id, NOW - 70 * HOUR)).toHaveLength(71);
    });
  });
}
