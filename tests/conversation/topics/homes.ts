/** Two homes for the reckonings: one that said all, one that said nothing. */
import { openTalk, type Talk } from "../../support/talk.ts";

export const NOW = "2026-11-25T16:00:00Z";

export const ANA = {
  timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, asleep: { from: "22:30", to: "06:30" },
  heater: { kind: "bell", max_load_kg: 16, max_load_source: "sheet", masonry_kg: 2400, wall_mm: 120, shut_off_damper: true, flue_height_m: 6 },
  house: { heat_loss_W_per_K: 110, floor_m2: 100, wanted_C: 20 },
  wood: [{ name: "birch", species: "birch", moisture_pct_wet: 17, volume_m3_stacked: 4, basket_kg: 9 }],
  weather: [["2026-11-25", -8, -3], ["2026-11-26", -12, -6], ["2026-11-27", -4, 1], ["2026-11-28", 0, 4]].map(([date, low_C, high_C]) => ({ date, low_C, high_C })),
};

export async function home(records: Record<string, unknown> = ANA, now: string = NOW): Promise<Talk> {
  const talk = await openTalk({ now });
  await talk.records("ana", records);
  return talk;
}

export const ids = (answer: { cautions: readonly { id: string }[] }): string[] => answer.cautions.map((caution) => caution.id);
