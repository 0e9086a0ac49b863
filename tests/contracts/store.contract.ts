/** What every store promises, whatever database is behind it. Call it inside a test file, once for each. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Store } from "../../src/records/ports.ts";
import { openStore } from "../../src/store/open.ts";
import type { Kind, Location } from "../store/locations.ts";
import { DAY, dueOf, HOUR, NOW, say } from "../store/made.ts";
import { builders } from "./store/builders.ts";
import { dueRows } from "./store/due-rows.ts";
import { entering } from "./store/entering.ts";
import { forgetting } from "./store/forgetting.ts";
import { groups } from "./store/groups.ts";
import { household } from "./store/household.ts";
import { many } from "./store/many.ts";
import { messages } from "./store/messages.ts";
import { outbox } from "./store/outbox.ts";

export function storeContract(kind: Kind): void {
  const run = kind.missing ? describe.skip : describe;
  run(`${kind.name}${kind.missing ? ` (${kind.missing})` : ""} as a store`, () => {
    let at: Location;
    let opened: Store;
    beforeEach(async () => {
      at = await kind.fresh();
      opened = await openStore(at.location);
    });
    afterEach(async () => {
      await opened.close();
      await at.remove();
    });
    /** the store of the test that runs now */
    const store = new Proxy({} as Store, { get: (_, name) => Reflect.get(opened, name) });

    entering(store);
    messages(store);
    household(store);
    groups(store);
    builders(store);
    dueRows(store);
    outbox(store);
    many(store);
    forgetting(store);

    test("the latest instant and the earliest", async () => {
      expect(await store.lastInstant()).toBeNull();
      expect(await store.nextDue(["lines"])).toBeNull();
      await say(store, "ana", (s) => ({ due: [dueOf(s, "k", NOW + DAY)] }), NOW);
      expect(await store.lastInstant()).toBe(NOW);
      expect(await store.nextDue(["lines"])).toBe(NOW + DAY);
      await store.noteInstant(NOW + HOUR);
      expect(await store.lastInstant()).toBe(NOW + HOUR);
      await store.noteInstant(NOW + 2 * HOUR);
      expect(await store.lastInstant()).toBe(NOW + 2 * HOUR);
    });

    test("the check says that all is well", async () => {
      expect(await store.check()).toMatchObject({ ok: true });
    });
  });
}
