/**
 * How one load burns: the flame travels through the stack, each piece chars from its faces inwards, the charcoal glows away.
 * Everything depends on the load and the air alone, never on the heater's temperature, so it is reckoned once per fire.
 */
import { NCV_DRY_MJ_PER_KG, ncv_MJ_per_kg } from "./fuel.ts";

/** What the burn curve rests on. Passed in so that the sensitivity of every figure can be printed. */
export const BURN = {
  /**
   * Charring depth per minute at 12 % moisture. EN 1995-1-2 table 3.1: 0.65 softwood, 0.50 dense hardwood (from memory);
   * between them.
   */
  charring_mm_per_min: 0.6,
  /** Charring slows as 1 / (1 + 2.5 u), u kg of water per kg dry wood. Mikkola, VTT 1990 (from memory). */
  charring_water_factor: 2.5,
  /** Shorter side of a split. Common practice 80 to 100 mm, no source. */
  split_mm: 85,
  /** From lighting to all pieces aflame for 20 kg, top-lit, 17 %. Common practice 20 to 40 min, no source. */
  engage_min: 28,
  /** The same lit from below, as a share. Common practice 10 to 15 min, no source. */
  engage_bottom_share: 0.45,
  /** Kindling, before the first piece burns. Common practice 3 to 5 min, no source. */
  kindling_min: 3,
  /** Share of the dry mass that leaves as gas; the rest is charcoal. Handbook figure 0.8 to 0.85. */
  volatile_share: 0.8,
  /** Net calorific value of charcoal from wood, MJ/kg: handbooks 29 to 33 (from memory). */
  charcoal_MJ_per_kg: 32,
  /**
   * Time a bed of 20 kg of wood's charcoal glows once the flames are gone, if none had burnt before. Fitted to bed black at
   * 2 to 4 h, common practice, no source.
   */
  glow_min: 170,
  /** Speed of the charcoal's burning under full flame, which takes the oxygen, as a share. Common practice, no source. */
  glow_under_flame_share: 0.3,
  /** A bed is black when this share of its charcoal is left. "Charcoal left 1 % of the load": common practice, no source. */
  black_share: 0.04,
  /** Gas that leaves unburnt at 17 % moisture, share of its heat: 1000 mg CO and 80 mg hydrocarbons per MJ, EN 15544 limits. */
  unburnt_share: 0.013,
  /** Moisture that makes it e times as much, percentage points. Common practice, no source. */
  unburnt_growth_pct: 9,
  /** Charcoal that leaves as carbon monoxide, share of its heat. Common practice, no source. */
  charcoal_unburnt_share: 0.02,
  /**
   * Air at full opening per kg of largest load, kg/s: 2.95 times the theoretical need of the load (EN 15544, 4.5), over the
   * 103 min its flames last here.
   */
  air_kg_per_s_kg: (2.95 * 4.9857) / (103 * 60),
  /** Air the owner leaves the embers, as a share of full. Common practice, no source. */
  ember_air_share: 0.25,
  /** The flame cannot take more than this share of the air's oxygen; a larger load burns longer instead. Common practice, no source. */
  oxygen_share: 0.85,
} as const;
export type BurnParameters = { readonly [key in keyof typeof BURN]: number };

/** Theoretical air per kg of dry wood, kg, from C 50.2, H 6.1, O 43.1 %. */
const AIR_PER_DRY_KG = 6.007;
/** Water formed from the hydrogen of dry wood, kg/kg: 0.061 * 18.015 / 2.016. */
const WATER_OF_HYDROGEN = 0.545;
/** Heat of evaporation at 25 °C, MJ/kg. ISO 18125. */
const LATENT_MJ_PER_KG = 2.443;
const STEP_MIN = 1;

export interface Load {
  readonly load_kg: number;
  /** wet basis, 0 to 60 % */
  readonly moisture_pct_wet: number;
  /** what the firebox and its air are made for */
  readonly max_load_kg: number;
  readonly ncv_dry_MJ_per_kg?: number;
  readonly split_mm?: number;
  readonly lit?: "top" | "bottom";
  /** share of the full air opening while there is flame, 0.3 to 1 */
  readonly air_share?: number;
}

export interface Burn {
  /** heat set free in the heater up to each whole minute, J */
  readonly released_J: Float64Array;
  /** wood turned to gas up to each whole minute, kg, water included */
  readonly gas_kg: Float64Array;
  readonly engaged_h: number;
  /** four fifths of the wood is gas: the pile is down to embers and brands */
  readonly collapsed_h: number;
  readonly flame_out_h: number;
  readonly bed_black_h: number;
  readonly flame_air_kg_per_s: number;
  readonly ember_air_kg_per_s: number;
  readonly peak_W: number;
  /** gross = released + latent + unburnt + charcoal left */
  readonly gross_J: number;
  readonly latent_J: number;
  readonly unburnt_J: number;
  readonly charcoal_left_J: number;
  /** net calorific value of the load: gross less latent */
  readonly net_J: number;
}

/** Share of a burning square piece that is gas, x = age over the time to char through: 1 - (1 - x)^2, and its integral over x. */
const gone = (x: number): number => (x <= 0 ? 0 : x >= 1 ? 1 : 1 - (1 - x) ** 2);
const goneIntegral = (x: number): number => (x <= 0 ? 0 : x >= 1 ? x - 1 / 3 : x - (1 - (1 - x) ** 3) / 3);

/**
 * The burn of one load. Pieces catch evenly between kindling and full engagement and char through in half a split's thickness;
 * charcoal burns as a shrinking body (2/3 power) and faster once the flames have left it the oxygen.
 */
export function burnOf(load: Load, p: BurnParameters = BURN): Burn {
  const { load_kg, moisture_pct_wet, lit = "top", air_share = 1 } = load;
  const ncv_dry_MJ_per_kg = load.ncv_dry_MJ_per_kg ?? NCV_DRY_MJ_PER_KG.unknown.typical;
  const dry_kg = load_kg * (1 - moisture_pct_wet / 100);
  const water_kg = load_kg - dry_kg;
  const u = water_kg / dry_kg;
  const split_mm = load.split_mm ?? p.split_mm;

  const slower = (reference: number): number => (1 + p.charring_water_factor * u) / (1 + p.charring_water_factor * reference);
  const air_kg_per_s = p.air_kg_per_s_kg * load.max_load_kg * air_share;
  let engage_min =
    p.engage_min *
    Math.cbrt(load_kg / 20) *
    Math.sqrt(split_mm / p.split_mm) *
    slower(0.17 / 0.83) *
    (lit === "bottom" ? p.engage_bottom_share : 1);
  let piece_min = (split_mm / 2 / p.charring_mm_per_min) * slower(0.12 / 0.88);
  const peakPerMin = (engage: number, piece: number): number => gone(engage / piece) / engage;
  const demand_kg_per_s = (dry_kg * AIR_PER_DRY_KG * peakPerMin(engage_min, piece_min)) / 60;
  const starved = Math.max(1, demand_kg_per_s / (p.oxygen_share * air_kg_per_s));
  engage_min *= starved;
  piece_min *= starved;

  const gasShare = (minute: number): number =>
    (piece_min / engage_min) *
    (goneIntegral((minute - p.kindling_min) / piece_min) - goneIntegral((minute - p.kindling_min - engage_min) / piece_min));
  const flame_out_min = p.kindling_min + engage_min + piece_min * (1 - FLAME_TAIL);

  const charcoal_kg = dry_kg * (1 - p.volatile_share);
  const glow_min = p.glow_min * (load_kg / 20) ** 0.25;
  const charcoalBurnt_kg: number[] = [0];
  let standing_kg = 0;
  let bed_black_min = 0;
  for (let minute = 0; bed_black_min === 0; minute += STEP_MIN) {
    const made_kg = charcoal_kg * (gasShare(minute + STEP_MIN) - gasShare(minute));
    const flame = (gasShare(minute + STEP_MIN) - gasShare(minute)) / (peakPerMin(engage_min, piece_min) * STEP_MIN);
    const speed = (1 - (1 - p.glow_under_flame_share) * Math.min(1, flame)) * (3 / glow_min) * Math.cbrt(charcoal_kg);
    const half_kg = Math.max(0, standing_kg + made_kg / 2 - (speed * STEP_MIN * standing_kg ** (2 / 3)) / 2);
    const burnt_kg = Math.min(standing_kg + made_kg, speed * STEP_MIN * half_kg ** (2 / 3));
    standing_kg += made_kg - burnt_kg;
    charcoalBurnt_kg.push(charcoalBurnt_kg.at(-1)! + burnt_kg);
    if (minute + STEP_MIN > flame_out_min && standing_kg <= p.black_share * charcoal_kg) bed_black_min = minute + STEP_MIN;
  }

  const net_MJ = load_kg * ncv_MJ_per_kg(ncv_dry_MJ_per_kg, moisture_pct_wet);
  const charcoal_MJ = charcoal_kg * p.charcoal_MJ_per_kg;
  const gasNet_MJ = net_MJ - charcoal_MJ;
  const gasUnburnt = Math.min(0.3, p.unburnt_share * Math.exp((moisture_pct_wet - 17) / p.unburnt_growth_pct));
  const latent_MJ = LATENT_MJ_PER_KG * (water_kg + WATER_OF_HYDROGEN * dry_kg);

  const minutes = bed_black_min + 1;
  const released_J = new Float64Array(minutes);
  const gas_kg = new Float64Array(minutes);
  let peak_W = 0;
  for (let minute = 0; minute < minutes; minute++) {
    const share = minute === minutes - 1 ? 1 : gasShare(minute);
    const burnt_kg = charcoalBurnt_kg[minute]!;
    released_J[minute] = 1e6 * (gasNet_MJ * (1 - gasUnburnt) * share + burnt_kg * p.charcoal_MJ_per_kg * (1 - p.charcoal_unburnt_share));
    gas_kg[minute] = share * (load_kg - charcoal_kg) + burnt_kg;
    if (minute > 0) peak_W = Math.max(peak_W, (released_J[minute]! - released_J[minute - 1]!) / 60);
  }
  const burntTotal_kg = charcoalBurnt_kg[minutes - 1]!;
  const minuteOf = (share: number): number => {
    let minute = 0;
    while (gasShare(minute) < share) minute++;
    return minute;
  };
  return {
    released_J,
    gas_kg,
    peak_W,
    engaged_h: (p.kindling_min + engage_min) / 60,
    collapsed_h: minuteOf(0.8) / 60,
    flame_out_h: flame_out_min / 60,
    bed_black_h: bed_black_min / 60,
    flame_air_kg_per_s: air_kg_per_s,
    ember_air_kg_per_s: p.air_kg_per_s_kg * load.max_load_kg * p.ember_air_share,
    gross_J: 1e6 * (net_MJ + latent_MJ),
    net_J: 1e6 * net_MJ,
    latent_J: 1e6 * latent_MJ,
    unburnt_J: 1e6 * (gasNet_MJ * gasUnburnt + burntTotal_kg * p.charcoal_MJ_per_kg * p.charcoal_unburnt_share),
    charcoal_left_J: 1e6 * (charcoal_kg - burntTotal_kg) * p.charcoal_MJ_per_kg,
  };
}
/** The last tenth of a piece's charring gives too little gas for a flame. Common practice, no source. */
const FLAME_TAIL = 0.1;
