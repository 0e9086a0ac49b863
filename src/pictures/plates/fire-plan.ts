/** The coming days: each day's weather as a box from low to high, the room as a band above it, fires as bars with their load. */
import { text } from "../../answer.ts";
import { formatNumber, q } from "../../quantities.ts";
import { INK } from "../look.ts";
import { dateFormat, inReaderUnit, ticks } from "../scale.ts";
import { along, note, notes, reach, sheet, up, type Plate } from "./plate.ts";

const HOUR_MS = 3_600_000;
/** Share of the plot that the fires take. */
const FIRES = 0.3;

const spec = sheet(310, [
  { data: { name: "days" }, mark: { type: "rect", color: INK.outside, opacity: 0.45 }, encoding: { ...along("from"), ...reach("x2", "to"), ...up("low"), ...reach("y2", "high") } },
  { data: { name: "room" }, mark: { type: "rect", color: INK.room, opacity: 0.35 }, encoding: { ...along("from"), ...reach("x2", "to"), ...up("low"), ...reach("y2", "high") } },
  { data: { name: "room" }, mark: { type: "rule", color: INK.room, strokeWidth: 2, strokeDash: [6, 3] }, encoding: { ...along("from"), ...reach("x2", "to"), ...up("wanted") } },
  { data: { name: "fires" }, mark: { type: "rect", color: INK.fire }, encoding: { ...along("from"), ...reach("x2", "to"), ...up("base"), ...reach("y2", "top") } },
  ...notes(),
]);

export const firePlanPlate: Plate<"fire-plan"> = {
  spec,
  fill(chart, { reader, write }) {
    const degrees = inReaderUnit("C", reader);
    const mass = inReaderUnit("kg", reader);
    const { days, fires, room } = chart;
    const from = days[0]?.from_ms ?? 0;
    const to = days.at(-1)?.to_ms ?? from + 24 * HOUR_MS;
    const coldest = degrees.of(Math.min(...days.map((day) => day.low_C), room.coldest_C));
    const warmest = degrees.of(Math.max(...days.map((day) => day.high_C), room.warmest_C, room.wanted_C));
    const span = warmest - coldest;
    const low = coldest - (span * (FIRES + 0.06)) / (1 - FIRES - 0.2);
    const high = warmest + span * 0.22;
    const heaviest = Math.max(1, ...fires.map((fire) => fire.load_kg));
    const width_ms = Math.min(0.36 * 24 * HOUR_MS, (to - from) / 22);
    const topOf = (load_kg: number): number => low + (high - low) * (FIRES - 0.08) * (load_kg / heaviest);
    const middle = (fire: { lit_at_ms: number }): number => Math.min(to - width_ms / 2, fire.lit_at_ms);
    const day = dateFormat(reader, { weekday: "short" });
    const at = days.map((one) => (one.from_ms + one.to_ms) / 2);
    const widest = days.reduce((most, one) => (one.high_C - one.low_C > most.high_C - most.low_C ? one : most));
    return {
      title: write(text("picture.fire-plan.title", { fires: fires.length, wood: q(chart.wood_kg, "kg", { digits: 0 }) })),
      subtitle: write(text("picture.fire-plan.subtitle", { unit: degrees.symbol, mass: mass.symbol })),
      x: { low: from, high: to, ticks: { values: at, labels: Object.fromEntries(at.map((value, i) => [String(value), day.format(days[i]?.from_ms)])) } },
      y: { low, high, ticks: above(ticks(low, high, 9, reader), coldest - span * 0.06) },
      data: {
        days: days.map((one) => ({ from: one.from_ms + 0.04 * (one.to_ms - one.from_ms), to: one.to_ms - 0.04 * (one.to_ms - one.from_ms), low: degrees.of(one.low_C), high: degrees.of(one.high_C) })),
        room: [{ from, to, low: degrees.of(room.coldest_C), high: degrees.of(room.warmest_C), wanted: degrees.of(room.wanted_C) }],
        fires: fires.map((fire) => ({ from: middle(fire) - width_ms / 2, to: middle(fire) + width_ms / 2, base: low, top: topOf(fire.load_kg) })),
        notes: [
          ...fires.map((fire) => note(middle(fire), topOf(fire.load_kg), formatNumber(mass.of(fire.load_kg), reader, mass.unit === "kg" ? 1 : 0), INK.fire, { align: "center", baseline: "bottom", dy: -2 })),
          note(from, Math.max(degrees.of(room.warmest_C), degrees.of(room.wanted_C)), write(text("picture.fire-plan.room", { low: q(room.coldest_C, "C", { digits: 1 }), high: q(room.warmest_C, "C", { digits: 1 }) })), INK.room, { baseline: "bottom", dy: -4, dx: 2 }),
          note((widest.from_ms + widest.to_ms) / 2, degrees.of((widest.low_C + widest.high_C) / 2), write(text("picture.fire-plan.outside")), INK.outsideText, { align: "center" }),
        ],
      },
    };
  },
};

const above = ({ values, labels }: ReturnType<typeof ticks>, from: number) => ({ values: values.filter((value) => value >= from), labels });
