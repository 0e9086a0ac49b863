/** One fire: face and room above, the heat given to the room as a hill below, the fire itself as a band at its start. */
import { text } from "../../answer.ts";
import { q } from "../../quantities.ts";
import { INK } from "../look.ts";
import { hourTicks, inReaderUnit, ticks } from "../scale.ts";
import { along, note, notes, reach, sheet, up, type Plate } from "./plate.ts";

const HOUR_MS = 3_600_000;
/** A reckoned time is named to ten minutes: more would be invented. */
const named = (at_ms: number): number => Math.round(at_ms / 600_000) * 600_000;
/** Share of the plot that the hill of heat takes. */
const HILL = 0.34;

const spec = sheet(300, [
  {
    layer: [
      { data: { name: "fire" }, mark: { type: "rect", color: INK.fire, opacity: 0.1 }, encoding: { ...along("from"), ...reach("x2", "late") } },
      { data: { name: "fire" }, mark: { type: "rect", color: INK.fire, opacity: 0.14 }, encoding: { ...along("from"), ...reach("x2", "early") } },
      { data: { name: "fire" }, mark: { type: "rule", color: INK.fire, strokeDash: [3, 3] }, encoding: { ...along("likely") } },
      { data: { name: "hill" }, mark: { type: "area", color: INK.heat, opacity: 0.75 }, encoding: { ...along(), ...up("output", "y2") } },
      { data: { name: "peak" }, mark: { type: "rule", color: INK.heatText, strokeWidth: 2 }, encoding: { ...along("low"), ...reach("x2", "high"), ...up("y", "y2") } },
      { data: { name: "peak" }, mark: { type: "point", filled: true, size: 45, color: INK.heatText, opacity: 1 }, encoding: { ...along(), ...up("y", "y2") } },
    ].map(withoutSecondAxis),
  },
  {
    layer: [
      { data: { name: "series" }, mark: { type: "line", color: INK.room, strokeWidth: 3 }, encoding: { ...along(), ...up("room") } },
      { data: { name: "series" }, mark: { type: "line", color: INK.face, strokeWidth: 2.5, strokeDash: [7, 3] }, encoding: { ...along(), ...up("facing") } },
      ...notes(),
    ],
  },
], { resolve: { scale: { y: "independent" } } });

/** The hill is labelled on itself: its axis would only crowd a narrow picture. */
function withoutSecondAxis(layer: object): object {
  const { encoding } = layer as { encoding: Record<string, object> };
  return encoding.y ? { ...layer, encoding: { ...encoding, y: { ...encoding.y, axis: null } } } : layer;
}

export const heatCurvePlate: Plate<"heat-curve"> = {
  spec,
  fill(chart, { reader, write }) {
    const degrees = inReaderUnit("C", reader);
    const at = (t_h: number): number => chart.lit_at_ms + t_h * HOUR_MS;
    const rows = chart.series.map(({ t_h, output_kW, facing_C, room_C }) => ({ x: at(t_h), output: output_kW, facing: degrees.of(facing_C), room: degrees.of(room_C) }));
    const end = rows.at(-1)?.x ?? at(24);
    const highest = rows.reduce((most, row) => (row.facing > most.facing ? row : most));
    const beside = rows.find((row) => row.x > highest.x && row.facing < highest.facing - 0.04 * (highest.facing - rows.at(-1)!.facing)) ?? highest;
    const peak_kW = Math.max(...rows.map((row) => row.output));
    const top = highest.facing;
    const bottom = Math.min(...rows.map((row) => Math.min(row.room, row.facing)));
    const low = bottom - ((top - bottom) * (HILL + 0.06)) / (1 - HILL - 0.16);
    const high = top + (top - bottom) * 0.26;
    const { bed_black_h: black, peak_output_h: peak } = chart;
    const roomAt = rows.findLast((row) => row.x <= at(Math.min(30, (end - chart.lit_at_ms) / HOUR_MS) * 0.8)) ?? rows[0]!;
    return {
      title: write(text("picture.heat-curve.title", { at: { at_ms: named(at(peak.value)), show: "day-time" } })),
      subtitle: write(text("picture.heat-curve.subtitle", { unit: degrees.symbol })),
      x: { low: chart.lit_at_ms, high: end, ticks: hourTicks(chart.lit_at_ms, end, 6, reader) },
      y: { low, high, ticks: only(ticks(low, high, 6, reader), bottom - (top - bottom) * 0.05) },
      y2: { low: 0, high: peak_kW / HILL, ticks: { values: [], labels: {} } },
      data: {
        series: rows,
        hill: rows,
        fire: [{ from: chart.lit_at_ms, early: at(black.low), likely: at(black.value), late: at(black.high) }],
        peak: [{ x: at(peak.value), low: at(peak.low), high: at(peak.high), y: peak_kW }],
        notes: [
          note(at(peak.high), low + (high - low) * HILL, write(text("picture.heat-curve.output", { peak: q(peak_kW, "kW", { digits: 1 }) })), INK.heatText, { dx: 8 }),
          note(at(black.high), high, write(text("picture.heat-curve.fire", { early: { at_ms: named(at(black.low)), show: "time" }, late: { at_ms: named(at(black.high)), show: "time" } })), INK.fire, { dx: 6, dy: 1, baseline: "top" }),
          note(Math.max(beside.x, at(black.high)), beside.facing, write(text("picture.heat-curve.face", { peak: q(chart.series.reduce((most, row) => Math.max(most, row.facing_C), -Infinity), "C") })), INK.face, { baseline: "bottom", dx: 10, dy: -2 }),
          note(roomAt.x, roomAt.room, write(text("picture.heat-curve.room")), INK.room, { baseline: "top", dy: 6, align: "center" }),
        ],
      },
    };
  },
};

/** Ticks from a value on: below it the plot belongs to the hill. */
const only = ({ values, labels }: ReturnType<typeof ticks>, from: number) => ({ values: values.filter((value) => value >= from), labels });
