/**
 * What each parameter does to each check value: every one changed by 10 % up and down, the larger change in percent of the figure.
 * `npm run sensitivity` prints the table and keeps it in SENSITIVITY.md.
 */
import { writeFile } from "node:fs/promises";
import { BURN } from "../../../src/reckoning/burn.ts";
import type { HeatCurve } from "../../../src/reckoning/heat-curve.ts";
import { EXCHANGE } from "../../../src/reckoning/heater-exchange.ts";
import { GEOMETRY } from "../../../src/reckoning/heater-layers.ts";
import { PARAMETERS } from "../../../src/reckoning/heater.ts";
import { FLUE } from "../../../src/reckoning/heater-flue.ts";
import { curve, MIDDLE } from "./cases.ts";
import { BURNING, type CheckValue, HEAT } from "./check-values.ts";

const MORE: readonly CheckValue[] = [
  { name: "warmest, h", of: (c) => c.peak_output_h, band: [3, 6] },
  { name: "half output, h", of: (c) => c.half_output_h ?? 48, band: [8, 24] },
  { name: "given in 24 h, kWh", of: (c) => c.given_24h_kWh, band: [55, 75] },
  { name: "room at 07:00, °C", of: (c) => c.series[52]!.room_C, band: [15, 28] },
];
const COLUMNS = [...BURNING, ...HEAT, ...MORE];
const GROUPS = { burn: BURN, exchange: EXCHANGE, flue: FLUE, geometry: GEOMETRY } as const;

/** Largest relative change of every figure, by parameter. */
export function sensitivities(): { parameter: string; changes: number[] }[] {
  const base = COLUMNS.map((column) => column.of(curve(MIDDLE, 20)));
  return Object.entries(GROUPS).flatMap(([group, values]) =>
    Object.keys(values).map((key) => {
      const changed = [0.9, 1.1].map((factor): HeatCurve => {
        const value = (values as Record<string, number>)[key]! * factor;
        if (group === "geometry") return curve(MIDDLE, 20, { geometry: { ...GEOMETRY, [key]: value } });
        return curve(MIDDLE, 20, { parameters: { ...PARAMETERS, [group]: { ...values, [key]: value } } });
      });
      return {
        parameter: `${group}.${key}`,
        changes: COLUMNS.map((column, i) => Math.max(...changed.map((one) => Math.abs(column.of(one) / base[i]! - 1)))),
      };
    }),
  );
}

const letter = (i: number): string => String.fromCharCode(65 + i);

/** Check values with their bands, and below them what a parameter that is 10 % off does to each. */
export function sensitivityMarkdown(): string {
  const base = curve(MIDDLE, 20);
  const row = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const percent = (change: number): string => (change < 0.0005 ? "" : (100 * change).toFixed(1));
  return `${[
    "# What each parameter does",
    "",
    "20 kg at 17 % (wet basis) in a heater of 2750 kg, one fire a day. The bands are common practice, no source. Made by",
    "`npm run sensitivity`.",
    "",
    row(["", "figure", "reckoned", "band"]),
    row(["---", "---", "---:", "---"]),
    ...COLUMNS.map((column, i) => row([letter(i), column.name, column.of(base).toFixed(2), column.band.join(" to ")])),
    "",
    "The larger change of each figure, in percent of it, when the parameter is 10 % higher or lower; blank below 0.05 %.",
    "",
    row(["parameter", ...COLUMNS.map((_, i) => letter(i))]),
    row(["---", ...COLUMNS.map(() => "---:")]),
    ...sensitivities().map(({ parameter, changes }) => row([parameter, ...changes.map(percent)])),
  ].join("\n")}\n`;
}

export const SENSITIVITY_FILE = new URL("SENSITIVITY.md", import.meta.url);

if (import.meta.main) {
  const words = sensitivityMarkdown();
  await writeFile(SENSITIVITY_FILE, words);
  console.log(words);
}
