/** The season so far: what was burnt in each week. */
import { text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import { INK } from "../look.ts";
import { inReaderUnit, monthTicks, ticks } from "../scale.ts";
import { along, note, notes, reach, sheet, up, type Plate } from "./plate.ts";

const WEEK_MS = 7 * 86_400_000;

const spec = sheet(240, [
  { data: { name: "weeks" }, mark: { type: "rect", color: INK.fire }, encoding: { ...along("from"), ...reach("x2", "to"), ...up("base"), ...reach("y2", "mass") } },
  ...notes(),
]);

export const seasonPlate: Plate<"season"> = {
  spec,
  fill({ weeks }, { reader, write }) {
    const mass = inReaderUnit("kg", reader);
    const from = weeks[0]!.from_ms;
    const to = Math.max(weeks.at(-1)!.from_ms + WEEK_MS, from + 8 * WEEK_MS);
    const heaviest = weeks.reduce((most, week) => (week.load_kg > most.load_kg ? week : most));
    const high = Math.max(1, mass.of(heaviest.load_kg)) * 1.2;
    const total_kg = weeks.reduce((sum, week) => sum + week.load_kg, 0);
    const fires = weeks.reduce((sum, week) => sum + week.fires, 0);
    return {
      title: write(text("picture.season.title", { wood: q(total_kg, "kg", { digits: 0 }), fires })),
      subtitle: write(text("picture.season.subtitle", { unit: mass.symbol })),
      x: { low: from, high: to, ticks: monthTicks(from, to, 8, reader) },
      y: { low: 0, high, ticks: ticks(0, high, 4, reader) },
      data: {
        weeks: weeks.map((week) => ({ from: week.from_ms + 0.1 * WEEK_MS, to: week.from_ms + 0.9 * WEEK_MS, base: 0, mass: mass.of(week.load_kg) })),
        notes: [note(heaviest.from_ms + WEEK_MS / 2, mass.of(heaviest.load_kg), write(text("plain", { value: q(heaviest.load_kg, "kg", { digits: 0 }) })), INK.fire, { align: "center", baseline: "bottom", dy: -3 })],
      },
    };
  },
};
