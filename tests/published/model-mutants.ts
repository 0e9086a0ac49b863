/** Wrong variants of the heater model, the plan. Each must be caught by a published value or a check of the model. */
import type { Mutant } from "./mutants.ts";

const of = (file: string, changes: readonly (readonly [from: string, to: string, mistake: string])[]): Mutant[] =>
  changes.map(([from, to, mistake]) => ({ file: `reckoning/${file}`, from, to, mistake }));

export const MODEL_MUTANTS: readonly Mutant[] = [
  ...of("surface.ts", [
    ["(face_C + air_C) / 2", "face_C", "properties at the face instead of the film"],
    ["(0.492 / PRANDTL) ** (9 / 16)", "(0.492 * PRANDTL) ** (9 / 16)", "Prandtl number turned round"],
    ["Math.cbrt(Math.sqrt(rayleigh))", "Math.sqrt(Math.sqrt(rayleigh))", "laminar exponent for all"],
    ["height_m * height_m * height_m", "height_m", "Rayleigh number without the cube"],
    ["(a * a + b * b) * (a + b)", "4 * a * a * a", "linearised at the face"],
    ["const a = face_C + KELVIN", "const a = face_C", "Celsius for kelvin"],
    ["emissivity * STEFAN", "STEFAN", "a grey face taken as black"],
  ]),
  ...of("conduction.ts", [
    ["layer.heat_capacity_J_per_kgK * (dx_m / 2)", "layer.heat_capacity_J_per_kgK * dx_m", "each interval stored twice"],
    ["layer.conductivity_W_per_mK * area(0.5)", "layer.conductivity_W_per_mK * area(0)", "inner area for the middle one"],
    ["link.push(inner / joint)", "link.push(inner * joint)", "resistance taken as conductance"],
    ["1 - Math.SQRT1_2", "0.5", "the scheme's constant wrong"],
    ["capacity / (GAMMA * step_s)", "capacity / step_s", "stage as long as the step"],
    ["(1 - GAMMA) / GAMMA", "GAMMA / (1 - GAMMA)", "stages weighed the wrong way round"],
    ["rate_W_per_K[i]! * from_C[i]! + loss_W_per_K[i]! * surroundings_C", "rate_W_per_K[i]! * from_C[i]!", "what is lost outside goes to 0 °C"],
  ]),
  ...of("burn.ts", [
    ["load_kg * (1 - moisture_pct_wet / 100)", "load_kg / (1 + moisture_pct_wet / 100)", "wet basis read as dry"],
    ["1 - (1 - x) ** 2", "x", "a piece chars like a slab"],
    ["LATENT_MJ_PER_KG * (water_kg + WATER_OF_HYDROGEN * dry_kg)", "LATENT_MJ_PER_KG * water_kg", "water of hydrogen forgotten"],
    ["LATENT_MJ_PER_KG * (water_kg", "LATENT_MJ_PER_KG * (load_kg", "the whole load evaporated"],
    ["1e6 * (net_MJ + latent_MJ)", "1e6 * net_MJ", "gross taken as net"],
    ["net_MJ - charcoal_MJ", "net_MJ", "charcoal's heat counted twice"],
    ["(split_mm / 2 / p.charring_mm_per_min)", "(split_mm / p.charring_mm_per_min)", "charring from one side only"],
    ["Math.cbrt(load_kg / 20)", "(load_kg / 20) ** 3", "exponent turned round"],
    ["slower(0.12 / 0.88)", "1 / slower(0.12 / 0.88)", "wet wood chars faster"],
    ["(3 / glow_min) * Math.cbrt(charcoal_kg)", "(3 / glow_min)", "the bed's size forgotten"],
    ["Math.exp((moisture_pct_wet - 17)", "Math.exp((17 - moisture_pct_wet)", "wet wood burns cleaner"],
    ["dry_kg * (1 - p.volatile_share)", "dry_kg * p.volatile_share", "gas and charcoal swapped"],
    ["Math.max(1, demand_kg_per_s / (p.oxygen_share * air_kg_per_s))", "1", "more wood than its air, and no slower"],
    ["share * (load_kg - charcoal_kg) + burnt_kg", "share * (dry_kg - charcoal_kg) + burnt_kg", "the water does not leave as gas"],
  ]),
  ...of("heater-exchange.ts", [
    ["p.flame_emissivity * flame;", "flame;", "a flame taken as black"],
    ["(1040 + 0.127 * t_C) * t_C", "(1040 + 0.127 * t_C)", "capacity for enthalpy"],
    ["p.passage_forced_W_per_m2K * flow ** 0.8", "p.passage_forced_W_per_m2K * flow", "forced convection taken as proportional"],
    ["Math.exp((-h2 * heater.passage_m2) / (m * GAS_J_PER_KGK))", "1 - Math.exp((-h2 * heater.passage_m2) / (m * GAS_J_PER_KGK))", "kept and given heat swapped"],
    ["m * (enthalpy(flue_C) - enthalpy(intake_C));", "m * enthalpy(flue_C);", "flue loss counted from 0 °C"],
    ["weight_s * tally.output_W", "tally.output_W", "power summed as energy"],
    ["- drawn_W_per_K * (air_C - outside_C);", "+ drawn_W_per_K * (air_C - outside_C);", "drawn air warms the room"],
    ["passageFace_m2 * convection_W_per_m2K(t[3]!", "fireFace_m2 * convection_W_per_m2K(t[3]!", "areas mixed"],
    ["heater.door_m2 * p.glass_outside_W_per_m2K * (glass_K - KELVIN - air_C);", "p.glass_outside_W_per_m2K * (glass_K - KELVIN - air_C);", "door area forgotten"],
  ]),
  ...of("heater-layers.ts", [
    ["firebox_m2_per_kg: 0.09", "firebox_m2_per_kg: 0.9", "900 cm2 taken as 0.9 m2"],
    ["** (2 / 3);", "** (3 / 2);", "area by mass turned round"],
    ["lining_mm / 1000,", "lining_mm / 100,", "millimetres wrong"],
    ["masonry_kg_per_kg: 140", "masonry_kg_per_kg: 14", "masonry a tenth"],
    ["conductivity_W_per_mK: 0.895", "conductivity_W_per_mK: 8.95", "brick conducts like stone and more"],
    ["door_m2_per_kg: 0.0045", "door_m2_per_kg: 0.045", "door as large as the firebox"],
  ]),
  ...of("heater-room.ts", [
    ["1 / (1 / (9.1 * 2.5) + 1 / (3.45 * 4.5))", "9.1 * 2.5 + 3.45 * 4.5", "in series taken as beside each other"],
    ["165 / 3600", "165 / 1000", "kJ taken as kWh"],
    ["house.heat_capacity_kWh_per_K * 3.6e6 - air", "house.heat_capacity_kWh_per_K * 3600 - air", "kWh taken as Wh"],
    ["0.5 - 0.5 * Math.cos", "0.5 + 0.5 * Math.cos", "warmest in the morning"],
    ["house.heat_loss_W_per_K, 0)", "0, house.heat_loss_W_per_K)", "the fabric loses, not the air"],
  ]),
  ...of("heater-flue.ts", [
    ["Math.sqrt(Math.max(0, pull_Pa) / flue.design_Pa)", "Math.max(0, pull_Pa) / flue.design_Pa", "flow proportional to draught"],
    ["flue.leak_share * full_kg_per_s", "full_kg_per_s", "a closed door passes as much as an open slide"],
    ["Math.sqrt(Math.max(0.1, now /", "(Math.max(0.1, now /", "flow proportional to draught"],
  ]),
  ...of("heater.ts", [
    ["upTo(burn.released_J, end) - upTo(burn.released_J, minute) : 0", "(upTo(burn.released_J, end) - upTo(burn.released_J, minute)) / 2 : 0", "half the heat lost"],
    ["cold * burn.ember_air_kg_per_s", "cold * burn.flame_air_kg_per_s", "the air is never shut"],
    ["Math.max(burn.bed_black_h, fire.closed_h ??", "Math.min(burn.bed_black_h, fire.closed_h ??", "the flue shut over glow"],
  ]),
  ...of("heat-curve.ts", [
    ["quarter.given_J[96]!", "quarter.given_J[192]!", "two days for one"],
    ["burn.unburnt_J + burn.charcoal_left_J", "burn.unburnt_J", "charcoal left forgotten"],
    ["1 - flue_J / burn.net_J", "1 - flue_J / burn.gross_J", "efficiency on gross heat"],
    ["peaks.output_W / 2", "peaks.output_W / 4", "a quarter for half"],
    ["output_kW: output_W / 1000", "output_kW: output_W", "W for kW"],
  ]),
  ...of("settled.ts", [["value - weights.reduce", "value + weights.reduce", "accelerated the wrong way"]]),
  ...of("fire-plan.ts", [
    ["clock(start_hour + at_h - awake.from_h) <= window_h", "clock(start_hour + at_h - awake.from_h) <= awake_h", "lit up to bedtime"],
    ["inputs.outside(at_h) < MILDEST_C", "true", "lit into a mild evening"],
    ["awake_h - black_h - BEFORE_BED_H", "awake_h - BEFORE_BED_H", "a bed still glowing at bedtime"],
    ["hours: Math.floor(reach_h)", "hours: reach_h", "a plan from half past finds nothing"],
  ]),
  ...of("plan-search.ts", [
    ["Math.abs(other.lit_h - fire.lit_h) < spacing_h", "false", "spacing forgotten"],
    ["day_kg > max_day_kg + 1e-9", "false", "the day's limit forgotten"],
    ["Math.min(max_load_kg, Math.max(min_load_kg, stepped))", "stepped", "loads beyond the limits"],
    ["if (room < least)", "if (room > least)", "cold taken for warm"],
  ]),
];
