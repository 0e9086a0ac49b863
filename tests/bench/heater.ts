/**
 * What the heater model costs: sixty runs beside as many bare tridiagonal solves, a week's plan, and the same equations by scipy's LSODA
 * with a banded Jacobian at the same error.
 */
import { burnOf } from "../../src/reckoning/burn.ts";
import { firePlan, planPlant } from "../../src/reckoning/fire-plan.ts";
import { EXCHANGE } from "../../src/reckoning/heater-exchange.ts";
import { heaterFrom } from "../../src/reckoning/heater-layers.ts";
import { houseFrom, runOfDays } from "../../src/reckoning/heater-room.ts";
import { PARAMETERS, plantOf, type Plant, run, type Run, uniform } from "../../src/reckoning/heater.ts";
import { usualState } from "../../src/reckoning/plan-state.ts";
import { lsoda } from "./lsoda.ts";
import { cost_ms, inTurns, type Line, median, taken } from "./measure.ts";

const RUNS = 60;
const RUNS_LIMIT = 5;
const PLAN_LIMIT_MS = 200;
const LSODA_LIMIT = 20;

// outside air, no flue leak and a flue shut at bed black: the equations the Python side writes out again
const heater = heaterFrom({ max_load_kg: 20, masonry_kg: 2750, facing_material: "brick", outside_air: true });
const house = houseFrom({ heat_loss_W_per_K: 150, floor_m2: 100 });
const OUTSIDE_C = -3;
const burn = burnOf({ load_kg: 20, moisture_pct_wet: 17, max_load_kg: 20 });
const plantWith = (step_min: readonly [number, number, number]): Plant => plantOf(heater, house, { ...PARAMETERS, step_min });
const usual = plantWith(PARAMETERS.step_min);
const start = uniform(usual, 20, 20);
const once = (plant: Plant): Run => run(plant, start, { burn, outside: () => OUTSIDE_C, closed_h: burn.bed_black_h, hours: 48 });
const times = (count: number, work: () => void) => (): void => {
  for (let i = 0; i < count; i++) work();
};

/** Thomas' algorithm as every textbook has it, on as many nodes, as often as one run solves. */
function bareSolves(plant: Plant, solves: number): void {
  const { capacity_J_per_K, link_W_per_K } = plant.mesh;
  const size = capacity_J_per_K.length;
  const [c, d] = [new Float64Array(size), new Float64Array(size)];
  const x = Float64Array.from(start);
  for (let n = 0; n < solves; n++) {
    for (let i = 0; i < size; i++) {
      const low = i > 0 ? link_W_per_K[i - 1]! : 0;
      const up = i < size - 1 ? link_W_per_K[i]! : 0;
      const pivot = capacity_J_per_K[i]! / 180 + low + up + (i > 0 ? low * c[i - 1]! : 0);
      c[i] = -up / pivot;
      d[i] = ((capacity_J_per_K[i]! / 180) * x[i]! + (i > 0 ? low * d[i - 1]! : 0)) / pivot;
    }
    x[size - 1] = d[size - 1]!;
    for (let i = size - 2; i >= 0; i--) x[i] = d[i]! - c[i]! * x[i + 1]!;
  }
}

function solvesOf(black_h: number): number {
  const [fire, after, later] = PARAMETERS.step_min;
  let steps = 0;
  for (let quarter = 0; quarter < 192; quarter++) steps += 15 / (quarter / 4 < black_h ? fire : quarter / 4 < black_h + 3 ? after : later);
  return 2 * steps;
}

async function runs(): Promise<Line> {
  const solves = solvesOf(burn.bed_black_h);
  const { first_ms, second_ms, ratio } = await inTurns(15, times(RUNS, () => bareSolves(usual, solves)), times(RUNS, () => once(usual)));
  return { what: `${RUNS} model runs of 48 h over as many bare tridiagonal solves`, measured: ratio, limit: RUNS_LIMIT, is: "at most", unit: "x", note: `${second_ms.toFixed(1)} against ${first_ms.toFixed(1)} ms, ${solves} solves of ${start.length} nodes a run` };
}

const WEEK = [[-8, 0], [-10, -2], [-12, -4], [-6, 1], [-1, 5], [2, 9], [4, 11]].map(([low_C, high_C]) => ({ low_C: low_C!, high_C: high_C! }));

async function plan(): Promise<Line> {
  const known = {
    plant: planPlant({ max_load_kg: 16, masonry_kg: 2500 }, { heat_loss_W_per_K: 110, other_heat_W: 300 }),
    moisture_pct_wet: 17,
    start_hour: 6,
    hours: 162,
    wanted: [{ from_h: 6.5, to_h: 22, min_C: 20, max_C: 24 }],
    awake: { from_h: 6.5, to_h: 22.5 },
    bounds: { max_load_kg: 16, min_load_kg: 8, max_day_kg: 32, spacing_h: 10 },
  };
  const one = (): unknown => firePlan({ ...known, ...usualState(known, WEEK[0]!), outside: runOfDays(WEEK, 6) });
  const costs: number[] = [];
  for (let round = 0; round < 15; round++) costs.push(await cost_ms(one));
  return { what: "fire plan of 7 days", measured: median(costs.slice(3)), limit: PLAN_LIMIT_MS, is: "at most", unit: "ms", note: `the first, cold, ${costs[0]!.toFixed(0)} ms` };
}

async function againstLsoda(): Promise<Line> {
  const exact = once(plantWith([0.25, 0.5, 1]));
  const facing_C = once(usual).quarter.facing_C;
  const ours_K = Math.max(...Array.from(exact.quarter.facing_C, (C, i) => (i === 0 ? 0 : Math.abs(C - facing_C[i]!))));
  const line = { what: "heat curve: scipy's LSODA, banded, at equal error", limit: LSODA_LIMIT, is: "at least", unit: "x" } as const;
  const other = await lsoda({
    capacity: [...usual.mesh.capacity_J_per_K], link: [...usual.mesh.link_W_per_K], loss: [...usual.mesh.loss_W_per_K], ports: usual.ports,
    outer: heater.outer_m2, firebox: heater.firebox_m2, door: heater.door_m2, passage: heater.passage_m2, exchange: EXCHANGE,
    released: [...burn.released_J], gas: [...burn.gas_kg], peak: burn.peak_W, flame_out_h: burn.flame_out_h,
    flame_air: burn.flame_air_kg_per_s, ember_air: burn.ember_air_kg_per_s, full: PARAMETERS.burn.air_kg_per_s_kg * heater.max_load_kg,
    cold: coldAt(OUTSIDE_C), outside: OUTSIDE_C, exact: [...exact.quarter.facing_C], ours_K,
  });
  if ("missing" in other) return { ...line, measured: null, note: other.missing };
  const A_FEW = 20;
  const { first_ms, second_ms, ratio } = await taken(15, async () => (await cost_ms(times(A_FEW, () => once(usual)))) / A_FEW, other.once_ms);
  other.end();
  return { ...line, measured: ratio, note: `${second_ms.toFixed(1)} against ${first_ms.toFixed(2)} ms; worst face ${other.error_K.toFixed(4)} and ${ours_K.toFixed(4)} K off; ${other.settings}` };
}

function coldAt(outside_C: number): number {
  const density = (C: number, R: number): number => 97000 / (R * (C + 273.15));
  return Math.sqrt((density(outside_C, 288) - density(150, 286.5)) / (density(0, 288) - density(150, 286.5)));
}

export const heaterModel = async (): Promise<Line[]> => [await againstLsoda(), await runs(), await plan()];
