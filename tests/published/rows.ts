/** All rows of the reckonings, and how one is worked out with the shipped modules or with mutated ones. */
import type { Calculator } from "../../src/calculators/calculator.ts";
import type { Row } from "./row.ts";
import { airMoisture } from "./tables/air-moisture.ts";
import { draught, flueCooling } from "./tables/draught.ts";
import { fuel, ratedLoad } from "./tables/fuel.ts";
import { modelView } from "./model.ts";
import { firePlan, heatCurve } from "./tables/heat-curve.ts";
import { houseHeat, season } from "./tables/house-heat.ts";
import { meter, moisture, splitWeight } from "./tables/moisture.ts";
import { seasoning } from "./tables/seasoning.ts";
import { stack } from "./tables/stack.ts";

/** By calculator, so that each one's share can be counted. */
export const ROWS: Readonly<Record<string, readonly Row[]>> = {
  moisture: moisture,
  "split-weight": splitWeight,
  meter: meter,
  fuel: fuel,
  "rated-load": ratedLoad,
  stack: stack,
  "air-moisture": airMoisture,
  seasoning: seasoning,
  draught: [...draught, ...flueCooling],
  "house-heat": houseHeat,
  season: season,
  "heat-curve": heatCurve,
  "fire-plan": firePlan,
};

/** Where a calculator lives: its file in src/calculators and the name it is exported by. */
export const HOME: Readonly<Record<string, readonly [file: string, name: string]>> = {
  moisture: ["moisture.ts", "moisture"],
  "split-weight": ["moisture.ts", "splitWeight"],
  meter: ["moisture.ts", "meter"],
  fuel: ["fuel.ts", "fuel"],
  "rated-load": ["fuel.ts", "ratedLoad"],
  stack: ["stack.ts", "stack"],
  "air-moisture": ["air-moisture.ts", "airMoisture"],
  seasoning: ["seasoning.ts", "seasoning"],
  draught: ["draught.ts", "draught"],
  "house-heat": ["house-heat.ts", "houseHeat"],
  season: ["house-heat.ts", "season"],
  "heat-curve": ["heat-curve.ts", "heatCurve"],
  "fire-plan": ["fire-plan.ts", "firePlan"],
};

type Module = Readonly<Record<string, unknown>>;
/** Gives a module of src/, such as "reckoning/fuel.ts". */
export type Load = (path: string) => Promise<Module>;

const asFunction = (thing: unknown, name: string): ((...args: readonly unknown[]) => unknown) => {
  if (typeof thing !== "function") throw new Error(`${name} is not a function of that module`);
  return thing as (...args: readonly unknown[]) => unknown;
};

/** The figure or figures a row is held against. */
export async function evaluate(row: Row, load: Load): Promise<unknown> {
  const [module = "", fn] = row.of.split("#");
  if (fn !== undefined) return asFunction((await load(`reckoning/${module}`))[fn], row.of)(...(row.inputs as readonly unknown[]));
  const seen = modelView(row.of, row.inputs, load, run);
  if (seen) return seen;
  const [calculator = "", view] = row.of.split("@");
  if (view === "weeks") return weeks(await load("reckoning/drying.ts"), row.inputs as readonly unknown[]);
  const { months, ...inputs } = row.inputs as Record<string, unknown> & { months?: number };
  const result = await run(calculator, inputs, load);
  if (view === "month") return (result.moisture_pct_wet_by_month as readonly number[])[(months ?? 1) - 1];
  if (view === "days") return (Date.parse(String(result.ready_on)) - Date.parse(String(inputs.stacked_on))) / 86_400_000;
  if (view === "floor") return result.floor_pct_wet;
  return result;
}

async function run(name: string, inputs: unknown, load: Load): Promise<Record<string, unknown>> {
  const [file, exported] = HOME[name] ?? ["", ""];
  const calculator = (await load(`calculators/${file}`))[exported] as Calculator;
  return calculator.run(calculator.schema.parse(inputs));
}

const TARGET_PCT_DRY = 25;

function weeks(drying: Module, [climate, start_pct_dry, first_day, k20_per_d]: readonly unknown[]): number {
  const year = asFunction(drying.dryingYear, "dryingYear")(climate);
  return Number(asFunction(drying.daysToTarget, "daysToTarget")(year, { start_pct_dry, first_day, k20_per_d }, TARGET_PCT_DRY)) / 7;
}
