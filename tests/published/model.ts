/** The heater model as rows see it: each view takes the modules it is handed, shipped or mutated. */
import type * as Burn from "../../src/reckoning/burn.ts";
import type * as Conduction from "../../src/reckoning/conduction.ts";
import type * as Layers from "../../src/reckoning/heater-layers.ts";
import type * as Room from "../../src/reckoning/heater-room.ts";
import type * as Heater from "../../src/reckoning/heater.ts";
import { FIREBRICK, HOUR, layer, marcher, PLAIN } from "./march.ts";
import type { Load } from "./rows.ts";

type Args = readonly unknown[];
type Run = (calculator: string, inputs: unknown, load: Load) => Promise<Record<string, unknown>>;

const conduction = (load: Load): Promise<typeof Conduction> => load("reckoning/conduction.ts") as unknown as Promise<typeof Conduction>;

async function wall(load: Load, [which, hours, depth_m]: Args): Promise<number> {
  const module = await conduction(load);
  const march = marcher(module);
  const [thickness_m, cells] = which === "cooling" ? [0.12, 48] : [0.6, 600];
  const made = module.wallOf([layer(thickness_m, which === "cooling" ? FIREBRICK : PLAIN, cells)]);
  const end_s = Number(hours) * HOUR;
  const T = which === "cooling" ? march(made, 300, {}, { h_W_per_K: 10, ambient_C: 20 }, 60, end_s)
    : which === "flux" ? march(made, 20, { flux_W: () => 3000 }, {}, 20, end_s)
    : march(made, 20, { h_W_per_K: 35, ambient_C: 700 }, {}, 20, end_s);
  return T[Math.round((Number(depth_m) / thickness_m) * cells)] ?? Number.NaN;
}

const resistance = ({ link_W_per_K }: Conduction.Wall): number => link_W_per_K.reduce((sum, link) => sum + 1 / link, 0);

async function layers(load: Load, [lining_m, joint, facing_m]: Args): Promise<number> {
  const { wallOf } = await conduction(load);
  return resistance(wallOf([{ ...layer(Number(lining_m), FIREBRICK, 7), growth: 1.4, joint_m2K_per_W: Number(joint) }, layer(Number(facing_m), [0.78, 1760, 800], 5)]));
}

async function cylinder(load: Load, args: Args): Promise<number> {
  const [r1, r2, k] = args.map(Number) as [number, number, number];
  const { wallOf } = await conduction(load);
  return 1 / resistance(wallOf([{ ...layer(r2 - r1, [k, 1000, 1000], 200), area_m2: [2 * Math.PI * r1, 2 * Math.PI * r2] }]));
}

const burnOf = async (load: Load): Promise<Burn.Burn> =>
  ((await load("reckoning/burn.ts")) as unknown as typeof Burn).burnOf({ load_kg: 20, moisture_pct_wet: 17, max_load_kg: 20 });

/** 20 kg in a brick heater of 2750 kg with air from outside, everything at 20 °C at first, -3 °C outside, the flue shut on a black bed. */
async function fire(load: Load, [key, hours]: Args): Promise<number> {
  const { heaterFrom } = (await load("reckoning/heater-layers.ts")) as unknown as typeof Layers;
  const { houseFrom } = (await load("reckoning/heater-room.ts")) as unknown as typeof Room;
  const { plantOf, run, uniform } = (await load("reckoning/heater.ts")) as unknown as typeof Heater;
  const plant = plantOf(heaterFrom({ max_load_kg: 20, masonry_kg: 2750, facing_material: "brick", outside_air: true }), houseFrom({ heat_loss_W_per_K: 150, floor_m2: 100 }));
  const burn = await burnOf(load);
  const { quarter } = run(plant, uniform(plant, 20, 20), { burn, outside: () => -3, closed_h: burn.bed_black_h, hours: Number(hours) });
  return quarter[key as "facing_C" | "room_C"][Number(hours) * 4] ?? Number.NaN;
}

async function useful(load: Load, inputs: { load_kg: number; masonry_kg: number }, calculate: Run): Promise<number> {
  const { load_kg, masonry_kg } = inputs;
  const { flue_loss_kWh } = await calculate("heat-curve", {
    heater: { max_load_kg: load_kg, masonry_kg, shut_off_damper: true }, house: { heat_loss_W_per_K: 7 * load_kg }, load_kg, moisture_pct_wet: 17,
    lit_at: "2026-01-10T18:00:00", outside: { low_C: -5, high_C: 1 },
  }, load);
  const net_kWh = (load_kg * (19 * 0.83 - 0.02443 * 17)) / 3.6;
  return (net_kWh - Number(flue_loss_kWh)) / load_kg;
}

async function heater(load: Load, [, max_load_kg]: Args): Promise<number> {
  const { heaterFrom } = (await load("reckoning/heater-layers.ts")) as unknown as typeof Layers;
  const { firebox_m2, door_m2 } = heaterFrom({ max_load_kg: Number(max_load_kg) });
  return firebox_m2 + door_m2;
}

async function house(load: Load, [key, floor_m2]: Args): Promise<number> {
  const { houseFrom } = (await load("reckoning/heater-room.ts")) as unknown as typeof Room;
  return Number(houseFrom({ floor_m2: Number(floor_m2), heat_loss_W_per_K: 100 })[key as "heat_capacity_kWh_per_K"]);
}

async function perDay(load: Load, [heat_loss_W_per_K, outside_C]: Args, calculate: Run): Promise<number> {
  const DAYS = 7;
  const { wood_kg } = await calculate("fire-plan", {
    heater: { max_load_kg: 16, max_load_source: "sheet", masonry_kg: 2400, shut_off_damper: true, outside_air: true }, house: { heat_loss_W_per_K }, wood: { moisture_pct_wet: 17 },
    from: "2026-01-10T00:00:00", weather: Array.from({ length: DAYS }, (_, i) => ({ date: `2026-01-${10 + i}`, low_C: outside_C, high_C: outside_C })),
    wanted: [{ from: "00:00", to: "23:59", min_C: 20, max_C: 24 }], awake: { from: "06:00", to: "23:00" },
  }, load);
  return Number(wood_kg) / DAYS;
}

/** @returns undefined where the view is not one of the model's */
export function modelView(view: string, inputs: unknown, load: Load, calculate: Run): Promise<number> | undefined {
  const args = inputs as Args;
  switch (view) {
    case "heat-curve@wall":
      return wall(load, args);
    case "heat-curve@layers":
      return layers(load, args);
    case "heat-curve@cylinder":
      return cylinder(load, args);
    case "heat-curve@fire":
      return fire(load, args);
    case "heat-curve@burn":
      return burnOf(load).then((burn) => burn[inputs as "latent_J" | "net_J"]);
    case "heat-curve@useful":
      return useful(load, inputs as { load_kg: number; masonry_kg: number }, calculate);
    case "heat-curve@heater":
      return heater(load, args);
    case "heat-curve@house":
      return house(load, args);
    case "fire-plan@per-day":
      return perDay(load, args, calculate);
  }
  return undefined;
}
