/** Somebody of whom everything that keeps words holds hostile ones: heater, wood, reminders, rules, groups, pictures, people. */
import type { Message } from "../../../src/message.ts";
import type { Group } from "../../../src/records/group.ts";
import type { Decided, HeaterRule, PlaceRow, Snapshot, Write } from "../../../src/records/types.ts";
import type { Random } from "../../simulation/random.ts";
import { piece } from "./messages.ts";

export const NOW_MS = Date.parse("2026-11-25T18:00:00Z");
const DAY_MS = 86_400_000;

/** names in records are at most this long */
const NAME = 80;
const named = (random: Random): string => `${piece(random)} ${piece(random)}`.slice(0, NAME) || "x";

export function household(random: Random): Snapshot {
  const inGroup = random.chance(0.3);
  const place: PlaceRow = { id: "place", network: "fuzz", network_id: "place", kind: inGroup ? "group" : "private", name: piece(random), ...(inGroup ? { group_id: "g" } : { person_id: "p" }) };
  const group: Group = { id: "g", name: named(random), places: [place] };
  const talk = { person_id: "p", place_id: place.id, version: 0, updated_at_ms: NOW_MS, state: {} };
  const isStranger = random.chance(0.2);
  const facts = { ...(random.chance(0.5) ? { locale: random.of(["en-GB", "en-US", "de-DE", "de-CH", "fi-FI"]) } : {}), ...(random.chance(0.3) ? { country: random.of(["US", "FI", "DE", "NZ"]) } : {}) };
  const person = { id: "p", created_at_ms: 0, name: piece(random), facts };
  const nobody = { owner_id: "p", house: {}, wood: [], alarms: {}, weather: [] };
  const empty = { place, talk, guide: null, names: new Map([["q", piece(random)]]), groups: inGroup ? [group] : [] };
  if (isStranger) return { ...empty, person, heaters: [], home: nobody, fires: [], totals: { fires: 0, load_kg: 0, since_sweep_kg: 0, since_sweep_fires: 0 }, reminders: [] };

  const rule: HeaterRule = { from: "builder", said_by: "b", said_at_ms: NOW_MS - DAY_MS, max_load_kg: 12, words: piece(random), call: piece(random), close_down: piece(random), builder: named(random), version: 1 };
  const fires = Array.from({ length: random.from(0, 6) }, (_, at) => {
    const lit_at_ms = NOW_MS - (at + 1) * 20 * 3_600_000;
    return { id: `f${at}`, heater_id: "h", person_id: random.of(["p", "q"]), lit_at_ms, facts: { lit_at: new Date(lit_at_ms).toISOString(), load_kg: random.from(5, 14), species: named(random), moisture_pct_wet: random.from(12, 30), note: `${piece(random)} ${piece(random)}`.slice(0, 1_000) } };
  });
  const load_kg = fires.reduce((sum, fire) => sum + fire.facts.load_kg, 0);
  const entry = (person_id: string, kind: "order" | "sweep" | "meter") => ({ group_id: "g", kind, person_id, name: piece(random), at_ms: NOW_MS, facts: { volume_m3_stacked: 3, volume_m3_solid: 2, dry_kg: 900 } });
  return {
    ...empty, person: { ...person, heater_id: "h" }, fires,
    heaters: [{ id: "h", owner_id: random.of(["p", "q"]), member_ids: ["p", "q"], facts: { name: named(random), kind: "contraflow", max_load_kg: 14, max_load_source: "sheet", masonry_kg: 2_400, shut_off_damper: true, gas_exit: "top", commissioned_on: "2019-09-01" }, upkeep: { swept_on: "2026-04-01" }, rules: random.chance(0.5) ? [rule] : [] }],
    home: {
      owner_id: "p", house: { heat_loss_W_per_K: 170, wanted_C: 21 },
      wood: Array.from({ length: random.from(0, 3) }, () => ({ name: named(random), species: random.chance(0.5) ? "birch" : named(random), moisture_pct_wet: random.from(10, 40), volume_m3_stacked: 4 })),
      alarms: { co: { present: true, room: named(random), tested_on: "2026-10-01" } }, weather: [{ date: "2026-11-25", low_C: -9, high_C: -2 }],
    },
    totals: { fires: fires.length, load_kg, since_sweep_kg: load_kg, since_sweep_fires: fires.length },
    reminders: Array.from({ length: random.from(0, 4) }, (_, at) => ({ id: `r${at}`, person_id: "p", place_id: place.id, what: `${piece(random)} ${piece(random)}`, due_at_ms: NOW_MS + (at - 1) * DAY_MS, ...(random.chance(0.3) ? { missed_at_ms: NOW_MS - DAY_MS } : {}) })),
    album: [{ id: "a", person_id: "p", heater_id: "h", at_ms: NOW_MS - DAY_MS, what: "crack", media_type: "image/png", words: piece(random) }],
    builders: [{ heater_id: "h", person_id: "b", place_id: "b", name: piece(random), owner_id: "p", owner_place_id: place.id, since_ms: 0, accepted: random.chance(0.7), first_fires: true }],
    ...(inGroup
      ? {
          group: {
            cards: [], used: new Map(), own: [], winter: [], weeks: [], private_place: null, links: [],
            owners: [{ person_id: "q", name: piece(random), place_id: "q", member_ids: ["q"] }],
            lists: (["order", "sweep", "meter"] as const).map((kind) => ({ group_id: "g", kind, version: 1, opened_by: "p", at_ms: NOW_MS, facts: { date: "2026-12-05" } })),
            entries: [entry("p", "order"), entry("q", "order"), entry("q", "sweep"), entry("q", "meter")],
          },
        }
      : {}),
  };
}

/** What was decided, kept: as much of it as later answers say back. */
export function after(snapshot: Snapshot, { writes }: Pick<Decided<unknown>, "writes">): Snapshot {
  let now = snapshot;
  for (const one of writes) now = { ...now, ...changed(now, one) };
  return now;
}

function changed({ heaters, fires, talk, reminders }: Snapshot, one: Write): Partial<Snapshot> {
  switch (one.write) {
    case "person": return { person: one.person };
    case "heater": return { heaters: [one.heater, ...heaters.filter(({ id }) => id !== one.heater.id)] };
    case "home": return { home: one.home };
    case "fire": return { fires: [one.fire, ...fires.filter(({ id }) => id !== one.fire.id)] };
    case "talk": return { talk: { ...talk, version: talk.version + 1, state: one.state } };
    case "guide": return { guide: one.guide };
    case "end-guide": return { guide: null };
    case "reminder": return { reminders: [...reminders.filter(({ id }) => id !== one.reminder.id), one.reminder] };
    default: return {};
  }
}

export const message = ({ person, place }: Snapshot, native_id: string, at_ms: number, more: Partial<Message>): Message => ({
  adapter: "fuzz", native_id, received_at_ms: at_ms, identity: { network: "fuzz", id: person.id, ...(person.name ? { name: person.name } : {}) },
  place: { network: "fuzz", id: place.network_id, kind: place.kind, encrypted: null, moderates: true }, lot: "k3m9x7q2w5", ...more,
});
