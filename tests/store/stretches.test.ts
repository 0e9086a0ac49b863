/** When a heater was in use is the same whether the latest fires of the log are all there are, or the older ones have to be read as well. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Store } from "../../src/records/ports.ts";
import type { FireStretch } from "../../src/records/types.ts";
import { openStore } from "../../src/store/open.ts";
import { type Kind, type Location, MEMORY, POSTGRES } from "./locations.ts";
import { DAY, fireOf, heaterOf, say, snapshotOf, writeFire, writeHeater } from "./made.ts";

const AUTUMN = Date.parse("2026-09-20T17:00:00Z");
const YEAR = 365 * DAY;
const FOUR_YEARS = 4 * 366 * DAY;
/** days from one fire of a winter to its next; thirty part two stretches, 29 do not */
const APART = [1, 3, 29, 2, 0, 30, 4];

for (const kind of [MEMORY, POSTGRES]) stretchesOn(kind);

function stretchesOn(kind: Kind): void {
  const run = kind.missing ? describe.skip : describe;
  run(`stretches of fires on ${kind.name}${kind.missing ? ` (${kind.missing})` : ""}`, () => {
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

    // the store keeps sixty fires at hand
    test.each([0, 1, 59, 60, 61, 130])("%i fires", async (count) => {
      const logs = { ana: litOver(4, count), cat: olderThanCounts(count) };
      for (const [person, log] of Object.entries(logs))
        await say(store, person, (s) => {
          const heater = heaterOf(s);
          const fires = log.map((lit_at_ms, n) => fireOf(s, lit_at_ms, 12, { id: `${person}'s ${n}`, heater_id: heater.id }));
          return { writes: [writeHeater(heater), ...fires.map(writeFire)] };
        });
      for (const [person, log] of Object.entries(logs)) {
        const { fires, stretches } = await snapshotOf(store, person);
        expect(fires).toHaveLength(Math.min(log.length, 60));
        expect(stretches, person).toEqual(plainly(log));
      }
    });
  });
}

/** As many fires in each of so many winters, in no order. */
function litOver(winters: number, count: number): number[] {
  return Array.from({ length: count }, (_, n) => {
    const before = Array.from({ length: Math.floor(n / winters) }, (_, k) => APART[k % APART.length] ?? 0);
    return AUTUMN - (n % winters) * YEAR + before.reduce((sum, days) => sum + days, 0) * DAY;
  });
}

/** Some of these lie further back than the four years that count, the oldest two on either side of them. */
function olderThanCounts(count: number): number[] {
  const log = litOver(6, count);
  if (count < 3) return log;
  const rest = log.slice(0, -2);
  const oldest = Math.max(...rest) - FOUR_YEARS;
  return [...rest, oldest, oldest - 1];
}

function plainly(log: readonly number[]): FireStretch[] {
  const counted = log.filter((lit) => lit >= Math.max(...log) - FOUR_YEARS).sort((a, b) => a - b);
  const firsts = counted.filter((lit, n) => n === 0 || lit - (counted[n - 1] ?? 0) >= 30 * DAY);
  return firsts.map((first_ms, n) => {
    const own = counted.filter((lit) => lit >= first_ms && lit < (firsts[n + 1] ?? Number.POSITIVE_INFINITY));
    return { first_ms, last_ms: own.at(-1) ?? first_ms, fires: own.length };
  });
}
