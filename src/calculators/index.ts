/** Every calculator by name, and the one way to run one. */
import { z } from "zod";
import { airMoisture } from "./air-moisture.ts";
import { type Calculator, type Reckoned, runCalculator } from "./calculator.ts";
import { draught } from "./draught.ts";
import { firePlan } from "./fire-plan.ts";
import { fuel, ratedLoad } from "./fuel.ts";
import { heatCurve } from "./heat-curve.ts";
import { houseHeat, season } from "./house-heat.ts";
import { meter, moisture, splitWeight } from "./moisture.ts";
import { seasoning } from "./seasoning.ts";
import { stack } from "./stack.ts";

const ALL: readonly Calculator[] = [
  moisture,
  splitWeight,
  meter,
  fuel,
  ratedLoad,
  stack,
  airMoisture,
  seasoning,
  draught,
  houseHeat,
  season,
  heatCurve,
  firePlan,
];

export const CALCULATORS: Readonly<Record<string, Calculator>> = Object.fromEntries(ALL.map((one) => [one.name, one]));

/**
 * Run a calculator on inputs of unknown shape.
 * @returns the result, or one sentence naming the key, its value and what would be right; bad input never throws
 */
export function reckon(name: string, inputs: unknown): Reckoned {
  const one = Object.hasOwn(CALCULATORS, name) ? CALCULATORS[name] : undefined;
  if (!one) return { ok: false, error: `"${name}" is not a calculator; it should be one of ${Object.keys(CALCULATORS).join(", ")}.` };
  return runCalculator(one, inputs);
}

/** The JSON Schemas of every calculator: what it takes and what it gives. */
export const jsonSchemas = (): Record<string, { inputs: unknown; result: unknown }> =>
  Object.fromEntries(
    ALL.map((one) => [
      one.name,
      {
        inputs: z.toJSONSchema(one.schema, { io: "input", target: "draft-7" }),
        result: z.toJSONSchema(one.result, { io: "input", target: "draft-7" }),
      },
    ]),
  );
