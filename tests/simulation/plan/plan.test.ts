/** Some spring weeks of the trial that check.ts runs for a year in six climates. */
import { expect, it } from "vitest";
import { degreeDayOwners, habits, rival } from "./check.ts";
import { CLIMATES } from "./climates.ts";
import { planner } from "./owners.ts";
import { live, trialOf } from "./year.ts";

const DAYS = [60, 110] as const;

it.each([0, 2])("in climate %i the plan breaks no bound and burns at least 5 % less than any habit or pencil as warm", (which) => {
  const trial = trialOf(CLIMATES[which]!, 100 + which);
  const plan = live(trial, planner(trial.believed), DAYS);
  expect(plan.breaches).toEqual([]);
  expect(plan.fires).toBeGreaterThan(10);
  for (const other of [rival(habits(trial, DAYS), plan), rival(degreeDayOwners(trial, DAYS), plan)]) {
    expect(plan.wood_kg).toBeLessThan(0.95 * other.wood_kg);
  }
});
