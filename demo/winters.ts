/**
 * Two winters of fires for the demo's people, from one seed: the weather of their place with noise, a load that follows it, and now and then
 * a slip. Invented from end to end; the same seed makes the same winters.
 */
import { readFile } from "node:fs/promises";
import { parse } from "yaml";
import { allPlaces } from "../src/calculators/reference-data.ts";

export interface Member {
  readonly id: string;
  readonly story: string;
  readonly climate: string;
  readonly person: Record<string, unknown>;
  readonly heater?: Record<string, unknown> & { readonly max_load_kg?: number; readonly masonry_kg?: number };
  readonly house?: Record<string, unknown>;
  readonly wood?: readonly Record<string, unknown>[];
  readonly upkeep?: Record<string, unknown>;
  readonly alarms?: Record<string, unknown>;
  readonly fires_heater_of?: string;
  readonly habits?: { readonly share: number; readonly damp_share: number; readonly air_early_share: number };
}
export interface Turn {
  readonly who?: string;
  readonly says?: string;
  readonly presses?: string;
  readonly passes?: string;
}
export interface Community {
  readonly seed: number;
  readonly talk_at: string;
  readonly people: readonly Member[];
  readonly talk: readonly Turn[];
}

export const community = async (): Promise<Community> => parse(await readFile(new URL("./community.yaml", import.meta.url), "utf8")) as Community;

/** mulberry32: small, seedable, good enough for a demo */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Fires of a member from two years before `until_ms` on, one a day when it is cold enough, two when it is very cold. */
export function winters(member: Member, until_ms: number, seed: number): Record<string, unknown>[] {
  const roll = dice(seed + [...member.id].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 7));
  const place = allPlaces().find(({ name }) => name === member.climate);
  if (!place || !member.heater || !member.habits) return [];
  const max_kg = member.heater.max_load_kg ?? 0.005 * (member.heater.masonry_kg ?? 1500);
  const wood = member.wood?.[0] as { species?: string; moisture_pct_wet?: number } | undefined;
  const fires: Record<string, unknown>[] = [];
  let swing = 0;
  for (let day_ms = until_ms - 730 * 86_400_000; day_ms < until_ms - 86_400_000 / 2; day_ms += 86_400_000) {
    const date = new Date(day_ms);
    swing = 0.8 * swing + 4 * (roll() - 0.5);
    const mean_C = (place.mean_C[date.getUTCMonth()] ?? 10) + swing;
    if (mean_C > 11 || roll() < 0.06) continue;
    for (const hour of mean_C < -12 ? [6, 18] : [18]) {
      const lit_ms = Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), date.getUTCDate(), hour, Math.floor(roll() * 50));
      if (lit_ms >= until_ms - 20 * 3_600_000) continue;
      const load_kg = Math.round(2 * max_kg * Math.min(1, Math.max(0.5, member.habits.share * (0.7 + 0.03 * (11 - mean_C)) + 0.1 * (roll() - 0.5)))) / 2;
      const damp = roll() < member.habits.damp_share;
      const early = roll() < member.habits.air_early_share;
      const flame_min = Math.round(70 + 2 * load_kg + 25 * roll() + (damp ? 30 : 0));
      const at = (minutes: number): string => new Date(lit_ms + minutes * 60_000).toISOString();
      fires.push({
        lit_at: at(0), load_kg: Math.min(load_kg, Math.floor(2 * max_kg) / 2), ...(wood?.species ? { species: wood.species } : {}),
        moisture_pct_wet: Math.round(10 * ((damp ? 23 : (wood?.moisture_pct_wet ?? 17)) + 3 * (roll() - 0.5))) / 10,
        air: early ? "half" : "open", flame_out_at: at(flame_min), air_closed_at: at(early ? flame_min - 20 : flame_min + 15),
        ...(member.heater.shut_off_damper ? { damper_closed_at: at(flame_min + 70 + Math.round(50 * roll())), bed_at_close: "black" } : {}),
        outside_C: Math.round(10 * (mean_C - 2)) / 10, stack: roll() < 0.9 ? "criss-cross" : "tight",
      });
    }
  }
  return fires;
}
