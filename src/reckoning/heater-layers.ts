/** From what an owner knows about a heater to layers and areas the reckoning can use; every assumption is said in a sentence. */
import type { Layer } from "./conduction.ts";
import { ratedLoad_kg } from "./load.ts";

/** The keys of a heater record that the reckoning uses. */
export interface HeaterFacts {
  readonly kind?: "channel" | "bell" | "contraflow" | "mixed" | "unknown";
  readonly max_load_kg?: number;
  readonly nominal_output_kW?: number;
  readonly nominal_heating_time_h?: number;
  readonly masonry_kg?: number;
  readonly wall_mm?: number;
  readonly facing_m2?: number;
  readonly facing_material?: "brick" | "tile" | "soapstone" | "render" | "stone";
  readonly flue_height_m?: number;
  readonly flue_on_outside_wall?: boolean;
  readonly shut_off_damper?: boolean;
  readonly outside_air?: boolean;
  readonly lighting?: "top" | "bottom" | "unknown";
}

interface Material {
  readonly conductivity_W_per_mK: number;
  readonly density_kg_per_m3: number;
  readonly heat_capacity_J_per_kgK: number;
}

/**
 * Fireclay brick: k 1.05, density 2150 at 400 °C, VDI Heat Atlas; capacity between its 956 (400 °C) and 750 (20 °C). EN
 * 15544 (2023): k 0.90 to 1.35.
 */
const FIREBRICK: Material = { conductivity_W_per_mK: 1.05, density_kg_per_m3: 2150, heat_capacity_J_per_kgK: 900 };

/**
 * Facings: material; usual thickness of lining and facing, mm (common practice, no source); joint between them, m2K/W (ISO
 * 6946 for an open gap of 10 mm: 0.15 cold, 0.05 at 150 °C, less where it is bridged); facing area beside that of brick.
 */
const FACINGS = {
  /** ASHRAE Fundamentals, fired clay brick 1920 */
  brick: {
    conductivity_W_per_mK: 0.895,
    density_kg_per_m3: 1920,
    heat_capacity_J_per_kgK: 840,
    lining_mm: 65,
    facing_mm: 110,
    joint: 0.035,
    spread: 1,
  },
  /** EN 12524, clay tiles */
  tile: {
    conductivity_W_per_mK: 1.0,
    density_kg_per_m3: 2000,
    heat_capacity_J_per_kgK: 800,
    lining_mm: 55,
    facing_mm: 35,
    joint: 0.005,
    spread: 1.3,
  },
  /** producer's data sheet: 6.4 W/mK, 2980 kg/m3 */
  soapstone: {
    conductivity_W_per_mK: 6.4,
    density_kg_per_m3: 2980,
    heat_capacity_J_per_kgK: 980,
    lining_mm: 60,
    facing_mm: 60,
    joint: 0.05,
    spread: 1.1,
  },
  /** brick on edge and lime-sand plaster, EN 12524 */
  render: {
    conductivity_W_per_mK: 0.8,
    density_kg_per_m3: 1700,
    heat_capacity_J_per_kgK: 900,
    lining_mm: 65,
    facing_mm: 70,
    joint: 0.01,
    spread: 1.05,
  },
  /** EN 12524, granite */
  stone: {
    conductivity_W_per_mK: 2.8,
    density_kg_per_m3: 2600,
    heat_capacity_J_per_kgK: 1000,
    lining_mm: 65,
    facing_mm: 90,
    joint: 0.05,
    spread: 1,
  },
} as const;

/** What the geometry rests on; passed in so that sensitivities can be printed. */
export const GEOMETRY = {
  /** Firebox surface per kg of largest load. EN 15544, 4.3.1 (from memory): 900 cm2/kg. */
  firebox_m2_per_kg: 0.09,
  /** Glass door. Common practice, no source; EN 15544 allows at most a sixth of the firebox surface. */
  door_m2_per_kg: 0.0045,
  /** Outside of the masonry round the firebox over its inside. Common practice, no source. */
  firebox_outer_ratio: 1.4,
  /** Masonry per kg of largest load, when only the load is known. Common practice 0.5 to 0.7 kg per 100 kg, no source. */
  masonry_kg_per_kg: 140,
  /**
   * Gas passages per kg of largest load: 1.3 to 1.5 sqrt(m) m long for 0.00273 m kg/s at 240 °C and 2 m/s, so 0.286 m2/kg.
   * EN 15544, 4.3.2 and 4.6 (from memory).
   */
  passage_m2_per_kg: 0.286,
  /**
   * Facing of a heater of 2750 kg; others by mass to the power 2/3. Gives 0.4 kW/m2; common practice 0.5 heavy to 1.0 light,
   * no source.
   */
  facing_m2_at_2750_kg: 7,
  /** Share of the masonry that takes part; the rest is base. Common practice, no source. */
  active_share: 0.9,
  /** Least share of the active masonry inside the walls, as partitions of the passages. Common practice, no source. */
  inner_share: 0.25,
} as const;
export type Geometry = { readonly [key in keyof typeof GEOMETRY]: number };

/** Share of the partitions that stands in the passages; the rest is firebox roof and floor. Common practice, no source. */
const PASSAGE_PARTITIONS = 0.75;

/** Passages beyond the least of EN 15544, by kind. Common practice, no source. */
const PASSAGE_RATIO = { channel: 1.3, contraflow: 1.25, bell: 1.2, mixed: 1.25, unknown: 1.25 } as const;

export interface HeaterModel {
  readonly max_load_kg: number;
  readonly masonry_kg: number;
  readonly facing_m2: number;
  readonly firebox_m2: number;
  readonly door_m2: number;
  readonly passage_m2: number;
  /** outer area of the masonry round the firebox and round the passages */
  readonly outer_m2: readonly [firebox: number, passages: number];
  readonly walls: readonly [firebox: readonly Layer[], passages: readonly Layer[]];
  /** index of the layer whose inner side the gas touches */
  readonly skinLayer: number;
  readonly flue_height_m: number;
  readonly flue_outside: boolean;
  readonly shut_off_damper: boolean;
  readonly outside_air: boolean;
  readonly lit: "top" | "bottom";
  /** sentences on what was assumed */
  readonly assumed: readonly string[];
}

const kg = (value: number): string => `${Math.round(value)} kg`;

/** Complete the facts. `cells` is the number of intervals in the lining, 4 to 40; the other layers follow. */
export function heaterFrom(facts: HeaterFacts, geometry: Geometry = GEOMETRY, cells = 8): HeaterModel {
  const assumed: string[] = [];
  const rated =
    facts.nominal_output_kW !== undefined && facts.nominal_heating_time_h !== undefined
      ? ratedLoad_kg(facts.nominal_output_kW, facts.nominal_heating_time_h)
      : undefined;
  const max_load_kg = facts.max_load_kg ?? rated ?? (facts.masonry_kg ?? 2100) / geometry.masonry_kg_per_kg;
  if (facts.max_load_kg === undefined) {
    assumed.push(
      rated === undefined
        ? `max_load_kg is not known; the firebox is reckoned as one for ${kg(max_load_kg)}, which is no permission to burn that much.`
        : `max_load_kg is reckoned as ${max_load_kg.toFixed(1)} kg from the nominal output (EN 15544).`,
    );
  }
  const masonry_kg = facts.masonry_kg ?? max_load_kg * geometry.masonry_kg_per_kg;
  if (facts.masonry_kg === undefined)
    assumed.push(`masonry_kg is not known; ${kg(masonry_kg)} is assumed from the load, give or take 30 %.`);

  const material = facts.facing_material ?? (facts.wall_mm !== undefined && facts.wall_mm < 110 ? "tile" : "brick");
  if (facts.facing_material === undefined) assumed.push(`facing_material is not known; ${material} is assumed.`);
  const facing = FACINGS[material];
  let area_m2 = facts.facing_m2 ?? geometry.facing_m2_at_2750_kg * facing.spread * (masonry_kg / 2750) ** (2 / 3);
  if (facts.facing_m2 === undefined)
    assumed.push(`facing_m2 is not known; ${area_m2.toFixed(1)} m² is assumed from the mass, give or take 25 %.`);
  let { lining_mm, facing_mm } = wallSplit(facts.wall_mm, facing.lining_mm, facing.facing_mm);
  const wall_kg = (): number => (area_m2 * (lining_mm * FIREBRICK.density_kg_per_m3 + facing_mm * facing.density_kg_per_m3)) / 1000;
  const active_kg = masonry_kg * geometry.active_share;
  const most_kg = active_kg * (1 - geometry.inner_share);
  if (wall_kg() > most_kg) {
    const shrink = most_kg / wall_kg();
    if (facts.wall_mm === undefined) {
      lining_mm *= shrink;
      facing_mm *= shrink;
    } else if (facts.facing_m2 === undefined) area_m2 *= shrink;
    else if (wall_kg() > active_kg)
      assumed.push(`masonry_kg is less than a wall of ${facts.wall_mm} mm on ${facts.facing_m2} m² weighs; the wall is believed.`);
  }
  if (facts.wall_mm === undefined)
    assumed.push(`wall_mm is not known; ${Math.round(lining_mm + facing_mm)} mm is assumed for ${material} and this mass.`);
  const inner_kg = Math.max(0, active_kg - wall_kg());

  const firebox_m2 = Math.min(geometry.firebox_m2_per_kg * max_load_kg, 0.4 * area_m2);
  const firebox_outer_m2 = Math.min(geometry.firebox_outer_ratio * firebox_m2, 0.6 * area_m2);
  const door_m2 = Math.min(geometry.door_m2_per_kg * max_load_kg, firebox_m2 / 6);
  const passages_outer_m2 = area_m2 - firebox_outer_m2;
  const passage_m2 = geometry.passage_m2_per_kg * max_load_kg * PASSAGE_RATIO[facts.kind ?? "unknown"];
  const inside = inner_kg > 0.01 * masonry_kg;
  const layers = (inner: number, outer: number, partition_m2: number, partition_kg: number): Layer[] => {
    const between = inner + ((outer - inner) * lining_mm) / (lining_mm + facing_mm);
    const wall: Layer[] = [
      {
        ...FIREBRICK,
        thickness_m: lining_mm / 1000,
        cells,
        growth: 1.25 ** (8 / cells),
        area_m2: [inner, between],
        joint_m2K_per_W: facing.joint,
      },
      {
        ...facing,
        thickness_m: facing_mm / 1000,
        cells: Math.max(3, Math.round(cells * (facing_mm > 60 ? 0.75 : 0.5))),
        area_m2: [between, outer],
        joint_m2K_per_W: 0,
      },
    ];
    const partition_m = partition_kg / (partition_m2 * FIREBRICK.density_kg_per_m3);
    return inside
      ? [
          {
            ...FIREBRICK,
            thickness_m: partition_m,
            cells: Math.max(3, Math.round(cells * 0.75)),
            growth: 0.75 ** (8 / cells),
            area_m2: [partition_m2, partition_m2],
          },
          ...wall,
        ]
      : wall;
  };
  return {
    max_load_kg,
    masonry_kg,
    facing_m2: area_m2,
    firebox_m2: firebox_m2 - door_m2,
    door_m2,
    passage_m2,
    outer_m2: [firebox_outer_m2, passages_outer_m2],
    walls: [
      layers(firebox_m2, firebox_outer_m2, firebox_m2, inner_kg * (1 - PASSAGE_PARTITIONS)),
      layers(
        passages_outer_m2,
        passages_outer_m2,
        Math.max(passage_m2 - passages_outer_m2, passages_outer_m2 / 2),
        inner_kg * PASSAGE_PARTITIONS,
      ),
    ],
    skinLayer: inside ? 1 : 0,
    flue_height_m: facts.flue_height_m ?? 6,
    flue_outside: facts.flue_on_outside_wall ?? false,
    shut_off_damper: facts.shut_off_damper ?? true,
    outside_air: facts.outside_air ?? false,
    lit: facts.lighting === "bottom" ? "bottom" : "top",
    assumed,
  };
}

/** A wall's lining and facing. A given total keeps a lining of at most 65 mm, which is one firebrick on edge. */
function wallSplit(wall_mm: number | undefined, lining_mm: number, facing_mm: number): { lining_mm: number; facing_mm: number } {
  if (wall_mm === undefined) return { lining_mm, facing_mm };
  const lining = Math.min(65, 0.6 * wall_mm);
  return { lining_mm: lining, facing_mm: wall_mm - lining };
}
