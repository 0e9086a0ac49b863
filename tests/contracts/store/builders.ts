import { describe, expect, test } from "vitest";
import type { Store } from "../../../src/records/ports.ts";
import type { BuilderLink, HeaterRule } from "../../../src/records/types.ts";
import { DAY, fireOf, NOW, owner, say, snapshotOf, writeFire, writeHeater } from "../../store/made.ts";

export function builders(store: Store): void {
  describe("a heater and its builder", () => {
    async function invited() {
      const ana = await owner(store, "ana");
      const heater_id = ana.heaters[0]?.id ?? "";
      await say(store, "ana", ({ place }) => ({ writes: [{ write: "builder-invitation", code: "ABCD-2345", heater_id, place_id: place.id, ends_at_ms: NOW + DAY }] }));
      return { ana, heater_id };
    }
    async function linked(more: Partial<BuilderLink> = {}) {
      const { ana, heater_id } = await invited();
      const ben = await say(store, "ben", ({ person, place }) => ({
        writes: [{ write: "builder", link: { heater_id, person_id: person.id, place_id: place.id, owner_id: ana.person.id, owner_place_id: ana.place.id, since_ms: NOW, accepted: true, first_fires: false, ...more } }],
      }));
      return { ana, ben, heater_id };
    }

    test("an invitation is found until it is used, taken the place of, or over", async () => {
      const { ana, heater_id } = await invited();
      expect(await store.builderInvitation("ABCD-2345", NOW)).toEqual({ heater_id, owner_id: ana.person.id, owner_place_id: ana.place.id, owner_name: "ana" });
      expect(await store.builderInvitation("ABCD-2345", NOW + DAY)).toBeNull();
      expect(await store.builderInvitation("ABCD-9999", NOW)).toBeNull();
      await say(store, "ana", ({ place }) => ({ writes: [{ write: "builder-invitation", code: "WXYZ-2345", heater_id, place_id: place.id, ends_at_ms: NOW + DAY }] }));
      expect(await store.builderInvitation("ABCD-2345", NOW)).toBeNull();
      const ben = await snapshotOf(store, "ben");
      await say(store, "ben", () => ({ writes: [{ write: "builder", link: { heater_id, person_id: ben.person.id, place_id: ben.place.id, owner_id: ana.person.id, owner_place_id: ana.place.id, since_ms: NOW, accepted: false, first_fires: false } }] }));
      expect(await store.builderInvitation("WXYZ-2345", NOW)).toBeNull();
    });
    test("who only asks sees nothing; who is accepted sees the heater, and the fires once they are shown", async () => {
      const { ben, heater_id } = await linked({ accepted: false });
      expect(ben.builds).toEqual([]);
      const asking = (await snapshotOf(store, "ana")).builders?.[0];
      expect(asking).toMatchObject({ person_id: ben.person.id, name: "ben", accepted: false });
      await say(store, "ana", (s) => ({ writes: [{ write: "builder", link: { ...(asking as BuilderLink), accepted: true } }, writeFire(fireOf(s, NOW, 9))] }));
      let seen = (await snapshotOf(store, "ben")).builds?.[0];
      expect(seen).toMatchObject({ heater: { id: heater_id }, fires: [], link: { owner_name: "ana" } });
      await say(store, "ana", () => ({ writes: [{ write: "builder", link: { ...(asking as BuilderLink), accepted: true, first_fires: true } }] }));
      seen = (await snapshotOf(store, "ben")).builds?.[0];
      expect(seen?.fires).toHaveLength(1);
      expect((await snapshotOf(store, "ben")).heaters).toEqual([]);
      await say(store, "ana", () => ({ writes: [{ write: "end-builder", heater_id, person_id: ben.person.id }] }));
      expect((await snapshotOf(store, "ben")).builds).toEqual([]);
    });
    test("a builder's rule is written to the heater with its history, guarded like any change of it", async () => {
      const { heater_id } = await linked();
      const rule = (max_load_kg: number, version: number): HeaterRule => ({ from: "builder", said_by: "ben", said_at_ms: NOW, max_load_kg, version });
      const ben = await say(store, "ben", ({ builds }) => ({ writes: (builds ?? []).map(({ heater }) => writeHeater({ ...heater, rules: [rule(9, 2)], rules_before: [rule(10, 1)] })) }));
      expect(ben.builds?.[0]?.heater).toMatchObject({ id: heater_id, rules: [rule(9, 2)], rules_before: [rule(10, 1)] });
      const ana = await snapshotOf(store, "ana");
      expect(ana.heaters[0]).toMatchObject({ owner_id: ana.person.id, member_ids: [ana.person.id], rules: [rule(9, 2)] });
    });
    test("a forgotten builder leaves figures without name, words and telephone; a forgotten owner leaves no link", async () => {
      const { ben, heater_id } = await linked();
      await say(store, "ben", ({ person, builds }) => ({
        writes: (builds ?? []).map(({ heater }) => writeHeater({ ...heater, rules: [{ from: "builder", said_by: person.id, said_at_ms: NOW, max_load_kg: 9, words: "From my shed.", call: "0123", builder: "Kiln" }] })),
      }));
      await say(store, "ben", ({ person }) => ({ writes: [{ write: "forget-person", person_id: person.id }] })).catch(() => {});
      const ana = await snapshotOf(store, "ana");
      expect(ana.heaters[0]?.rules).toEqual([{ from: "builder", said_by: "forgotten", said_at_ms: NOW, max_load_kg: 9 }]);
      expect(ana.builders).toEqual([]);
      expect(JSON.stringify(await store.exportPerson(ana.person.id))).not.toContain(ben.person.id);
      const cleo = await say(store, "cleo", ({ person, place }) => ({ writes: [{ write: "builder", link: { heater_id, person_id: person.id, place_id: place.id, owner_id: ana.person.id, owner_place_id: ana.place.id, since_ms: NOW, accepted: true, first_fires: false } }] }));
      expect(cleo.builds).toHaveLength(1);
      await say(store, "ana", ({ person }) => ({ writes: [{ write: "forget-person", person_id: person.id }] })).catch(() => {});
      expect((await snapshotOf(store, "cleo")).builds).toEqual([]);
    });
    test("a copy of everything kept names the builder's link, on both sides", async () => {
      const { ana, ben, heater_id } = await linked();
      for (const one of [ana, ben]) expect((await store.exportPerson(one.person.id)).builders).toEqual([expect.objectContaining({ heater_id, person_id: ben.person.id, accepted: true })]);
    });
  });
}
