import { describe, expect, test } from "vitest";
import type { Store } from "../../../src/records/ports.ts";
import { causeOf, DAY, decided, message, NOW, saying } from "../../store/made.ts";

export function entering(store: Store): void {
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

    test.each(["", "a\u0000b", "\ud800", "'; drop table people; --", "ä".repeat(5000), "🔥\u202e"])(
      "any words as account, name and text: %j",
      async (words) => {
        const odd = {
          identity: { network: "lines", id: words, name: words },
          place: { network: "lines", id: words, kind: "private", encrypted: null },
        } as const;
        const { person_id, place_id } = await store.enter(odd.identity, odd.place, NOW);
        const before = await store.load(person_id, place_id, NOW);
        await store.commit(
          causeOf(message("x", words)),
          before,
          decided({ answer: saying(words), writes: [{ write: "talk", state: { words } }] }),
          NOW,
        );
        expect((await store.load(person_id, place_id, NOW)).talk.state).toEqual({ words });
        expect((await store.inbox(`lines:x/${words}`))?.answer).toEqual(saying(words));
      },
    );
  });
}
