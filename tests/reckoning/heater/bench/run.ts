/**
 * What the heater model costs: one heat curve, a daily one, sixty runs beside as many bare tridiagonal solves, a week's plan;
 * and, where python3 has scipy, the same equations by LSODA with a banded Jacobian at the same error.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { burnOf } from "../../../../src/reckoning/burn.ts";
import { firePlan, planPlant } from "../../../../src/reckoning/fire-plan.ts";
import { usualState } from "../../../../src/reckoning/plan-state.ts";
import { EXCHANGE } from "../../../../src/reckoning/heater-exchange.ts";
import { heaterFrom } from "../../../../src/reckoning/heater-layers.ts";
import { houseFrom, runOfDays } from "../../../../src/reckoning/heater-room.ts";
import { fireRun, PARAMETERS, plantOf, type Plant, run, type Run, uniform } from "../../../../src/reckoning/heater.ts";

/** Processor time of one call, the best of five batches, ms. */
export function cost_ms(work: () => void, times: number): number {
  for (let i = 0; i < times; i++) work();
  let best = Infinity;
  for (let batch = 0; batch < 5; batch++) {
    const before = process.cpuUsage();
    for (let i = 0; i < times; i++) work();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / 1000 / times);
  }
  return best;
}

// outside air, no flue leak and a flue shut at bed black: the equations the Python side writes out again
const heater = heaterFrom({ max_load_kg: 20, masonry_kg: 2750, facing_material: "brick", outside_air: true });
const house = houseFrom({ heat_loss_W_per_K: 150, floor_m2: 100 });
const outside = (): number => -3;
const burn = burnOf({ load_kg: 20, moisture_pct_wet: 17, max_load_kg: 20 });
const plantWith = (step_min: readonly [number, number, number]): Plant => plantOf(heater, house, { ...PARAMETERS, step_min });
const usual = plantWith(PARAMETERS.step_min);
const start = uniform(usual, 20, 20);
const once = (plant: Plant): Run => run(plant, start, { burn, outside, closed_h: burn.bed_black_h, hours: 48 });

const exact = once(plantWith([0.25, 0.5, 1]));
const worst_K = (facing_C: ArrayLike<number>): number =>
  Math.max(...Array.from(exact.quarter.facing_C, (C, i) => (i === 0 ? 0 : Math.abs(C - facing_C[i]!))));
const ours_K = worst_K(once(usual).quarter.facing_C);
const ours_ms = cost_ms(() => once(usual), 40);
console.log(
  `one run of 48 h, ${start.length} nodes: ${ours_ms.toFixed(2)} ms; worst face against steps 12 times as short: ${ours_K.toFixed(3)} K`,
);
console.log(
  `with the days before until they repeat: ${cost_ms(() => fireRun(usual, { load_kg: 20, moisture_pct_wet: 17, outside, before: "daily", hours: 48 }), 10).toFixed(2)} ms`,
);

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
const SOLVES = solvesOf(burn.bed_black_h);
const [sixty_ms, bare_ms] = [
  cost_ms(() => {
    for (let i = 0; i < 60; i++) once(usual);
  }, 1),
  cost_ms(() => {
    for (let i = 0; i < 60; i++) bareSolves(usual, SOLVES);
  }, 1),
];
console.log(
  `60 runs: ${sixty_ms.toFixed(1)} ms, ${(sixty_ms / bare_ms).toFixed(2)} times as many bare tridiagonal solves (${SOLVES} a run, ${bare_ms.toFixed(1)} ms; limit 5)`,
);

const week = [
  [-8, 0],
  [-10, -2],
  [-12, -4],
  [-6, 1],
  [-1, 5],
  [2, 9],
  [4, 11],
].map(([low_C, high_C]) => ({ low_C: low_C!, high_C: high_C! }));
const known = {
  plant: planPlant({ max_load_kg: 16, masonry_kg: 2500 }, { heat_loss_W_per_K: 110, other_heat_W: 300 }),
  moisture_pct_wet: 17,
  start_hour: 6,
  hours: 162,
  wanted: [{ from_h: 6.5, to_h: 22, min_C: 20, max_C: 24 }],
  awake: { from_h: 6.5, to_h: 22.5 },
  bounds: { max_load_kg: 16, min_load_kg: 8, max_day_kg: 32, spacing_h: 10 },
};
const plan_ms = cost_ms(() => firePlan({ ...known, ...usualState(known, week[0]!), outside: runOfDays(week, 6) }), 3);
console.log(`a week's plan: ${plan_ms.toFixed(0)} ms (limit 200)`);

const python_ms = lsoda();
if (python_ms !== undefined)
  console.log(
    `scipy LSODA, banded, at the same error: ${python_ms.toFixed(0)} ms, ${(python_ms / ours_ms).toFixed(0)} times one run (limit: at least 20)`,
  );
if (sixty_ms > 5 * bare_ms || plan_ms > 200 || (python_ms !== undefined && python_ms < 20 * ours_ms)) process.exit(1);

function solvesOf(black_h: number): number {
  const [fire, after, later] = PARAMETERS.step_min;
  let steps = 0;
  for (let q = 0; q < 192; q++) steps += 15 / (q / 4 < black_h ? fire : q / 4 < black_h + 3 ? after : later);
  return 2 * steps;
}

/** The loosest tolerance of scipy's LSODA whose face is as near to the exact one as ours, ms; undefined without scipy. */
function lsoda(): number | undefined {
  const folder = mkdtempSync(join(tmpdir(), "gleed-lsoda-"));
  const file = join(folder, "problem.json");
  writeFileSync(
    file,
    JSON.stringify({
      capacity: [...usual.mesh.capacity_J_per_K],
      link: [...usual.mesh.link_W_per_K],
      loss: [...usual.mesh.loss_W_per_K],
      ports: usual.ports,
      outer: heater.outer_m2,
      firebox: heater.firebox_m2,
      door: heater.door_m2,
      passage: heater.passage_m2,
      exchange: EXCHANGE,
      released: [...burn.released_J],
      gas: [...burn.gas_kg],
      peak: burn.peak_W,
      flame_out_h: burn.flame_out_h,
      flame_air: burn.flame_air_kg_per_s,
      ember_air: burn.ember_air_kg_per_s,
      full: PARAMETERS.burn.air_kg_per_s_kg * heater.max_load_kg,
      cold: coldAt(-3),
      outside: -3,
      exact: [...exact.quarter.facing_C],
      ours_K,
    }),
  );
  const python = process.env.PYTHON ?? "python3";
  const answer = spawnSync(python, [new URL("./lsoda.py", import.meta.url).pathname, file], { encoding: "utf8" });
  rmSync(folder, { recursive: true });
  if (answer.status !== 0) {
    console.log(`scipy is not there to compare with (${(answer.stderr || String(answer.error)).trim().split("\n").at(-1)})`);
    return undefined;
  }
  console.log(answer.stdout.trimEnd());
  return Number(/best (\d+(?:\.\d+)?) ms/.exec(answer.stdout)?.[1]);
}

function coldAt(outside_C: number): number {
  const density = (C: number, R: number): number => 97000 / (R * (C + 273.15));
  return Math.sqrt((density(outside_C, 288) - density(150, 286.5)) / (density(0, 288) - density(150, 286.5)));
}
