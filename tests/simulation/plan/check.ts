/**
 * `npm run check:plan`, about 40 s: a year of days in six climates: the plan against the best-tuned fixed habit and an owner with degree days, on a house up to 30 % off
 * what all three believe. The habit and the degree-day owner are tuned with hindsight on the very year they are judged on.
 */
import { CLIMATES } from "./climates.ts";
import { degreeDays, habit, planner } from "./owners.ts";
import { live, type Outcome, type Trial, trialOf } from "./year.ts";

const LOADS = [8, 10, 12, 14, 16];
const MARKS = [6, 8, 10, 12, 14];
const SECOND = [-99, -6, -3, 0, 3, 6];

/** Every habit there is to tune. */
export function habits(trial: Trial, days?: readonly [number, number]): Outcome[] {
  return LOADS.flatMap((load_kg) =>
    MARKS.flatMap((below_C) =>
      SECOND.filter((second) => second < below_C).map((second_below_C) =>
        live(trial, habit({ load_kg, hours: [7, 18], below_C, second_below_C }), days),
      ),
    ),
  );
}
export const degreeDayOwners = (trial: Trial, days?: readonly [number, number]): Outcome[] =>
  [18, 18.5, 19, 19.5, 20, 20.5, 21, 21.5, 22, 23].map((inside_C) => live(trial, degreeDays(trial.believed, inside_C), days));

/** The one nearest to the plan's comfort: the least wood among those no colder, else the least cold. */
export function rival(outcomes: readonly Outcome[], plan: Outcome): Outcome {
  const warm = outcomes.filter((one) => one.below_h <= plan.below_h);
  return warm.length > 0
    ? warm.reduce((a, b) => (b.wood_kg < a.wood_kg ? b : a))
    : outcomes.reduce((a, b) => (b.below_h < a.below_h ? b : a));
}

/** Better than the nearest of its kind by at least so much, in wood where one is as warm, else in hours below. */
const LESS_WOOD = 0.05;
const FEWER_HOURS_BELOW = 100;
const gain = (plan: Outcome, other: Outcome): { wood: number; hours: number; is: boolean } => {
  const wood = 1 - plan.wood_kg / other.wood_kg;
  const hours = other.below_h - plan.below_h;
  return { wood, hours, is: wood >= LESS_WOOD || hours >= FEWER_HOURS_BELOW };
};

if (import.meta.main) {
  const show = (name: string, one: Outcome): string =>
    `  ${name.padEnd(26)}${one.wood_kg.toFixed(0).padStart(6)} kg${String(one.fires).padStart(5)} fires${one.below_h.toFixed(0).padStart(7)} h below${one.below_Kh.toFixed(0).padStart(6)} Kh${one.above_h.toFixed(0).padStart(6)} h above`;
  CLIMATES.forEach((climate, i) => {
    const trial = trialOf(climate, 100 + i);
    const started = performance.now();
    const plan = live(trial, planner(trial.believed));
    const seconds = (performance.now() - started) / 1000;
    const [pencils, fixes] = [degreeDayOwners(trial), habits(trial)];
    const [pencil, fixed] = [rival(pencils, plan), rival(fixes, plan)];
    const better = [...pencils, ...fixes].filter((one) => one.wood_kg <= plan.wood_kg && one.below_h <= plan.below_h);
    const gains = [gain(plan, pencil), gain(plan, fixed)];
    if (better.length > 0 || plan.breaches.length > 0 || !gains.every((one) => one.is)) process.exitCode = 1;
    console.log(
      `${climate.name}: heat loss believed ${trial.believed.house.heat_loss_W_per_K}, true ${trial.truth.heat_loss_W_per_K.toFixed(0)} W/K (${seconds.toFixed(1)} s)`,
    );
    console.log(show("plan", plan) + (plan.breaches.length > 0 ? `  BREACHES ${plan.breaches.slice(0, 3).join("; ")}` : ""));
    console.log(show("degree days, tuned", pencil));
    console.log(show("fixed habit, tuned", fixed));
    const said = gains.map((one) => `${(100 * one.wood).toFixed(0)} % less wood, ${Math.abs(one.hours).toFixed(0)} h ${one.hours < 0 ? "more" : "less"} below`).join("; ");
    console.log(`  breaches ${plan.breaches.length}; of ${pencils.length + fixes.length} rivals ${better.length} need no more wood and are no colder; against these two ${said}`);
  });
}
