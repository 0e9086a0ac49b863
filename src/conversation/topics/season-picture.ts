/** The season so far from the log: wood burnt in each week. */
import type { Picture } from "../../answer.ts";
import { pictureOf } from "../../pictures/charts.ts";
import type { Context } from "../context.ts";
import { DAY_MS, zonedAt } from "./around.ts";

const MOST_WEEKS = 30;
const FEWEST_WEEKS = 3;

/** Null while there are less than three weeks of weighed fires. */
export function seasonPicture(context: Context): Picture | null {
  const monday = (at_ms: number): number => {
    const day = zonedAt(context, at_ms).startOfDay();
    return day.subtract({ days: day.dayOfWeek - 1 }).epochMilliseconds;
  };
  const weighed = context.snapshot.fires.filter((fire) => fire.facts.load_kg !== undefined && fire.lit_at_ms <= context.now_ms && fire.lit_at_ms > context.now_ms - MOST_WEEKS * 7 * DAY_MS);
  if (weighed.length === 0) return null;
  const last = monday(context.now_ms);
  const first = monday(Math.min(...weighed.map((fire) => fire.lit_at_ms)));
  const count = Math.round((last - first) / (7 * DAY_MS)) + 1;
  if (count < FEWEST_WEEKS) return null;
  const weeks = Array.from({ length: count }, (_, i) => ({ from_ms: zonedAt(context, first).add({ weeks: i }).epochMilliseconds, load_kg: 0, fires: 0 }));
  for (const fire of weighed) {
    const week = weeks[Math.round((monday(fire.lit_at_ms) - first) / (7 * DAY_MS))];
    if (!week) continue;
    week.load_kg += fire.facts.load_kg ?? 0;
    week.fires += 1;
  }
  return pictureOf("season", { weeks });
}
