/**
 * What passes heat within one instant and stores none: flame, flue gas, glass door, facings and room. Given the temperatures the
 * masonry and the room would have without it, it finds the heat flows that agree with the temperatures they cause.
 */
import { type Flows, GAMMA, type Stepper } from "./conduction.ts";
import type { HeaterModel } from "./heater-layers.ts";
import { convection_W_per_m2K, KELVIN, radiation_W_per_m2K, STEFAN_BOLTZMANN } from "./surface.ts";

/** Ports of the heater's mesh, in this order. */
export const PORT = { fireSkin: 0, fireFace: 1, passageSkin: 2, passageFace: 3, air: 4, fabric: 5 } as const;

/** What the exchange rests on; passed in so that sensitivities can be printed. */
export const EXCHANGE = {
  /** Emissivity of a wood flame some 0.35 m thick, 1 - exp(-0.8 * 0.35). Absorption 0.8 per m: handbooks (from memory). */
  flame_emissivity: 0.25,
  /** Gas to firebox wall without and with full flow, W/m2K: free convection 5, forced 12. Handbooks (from memory). */
  firebox_still_W_per_m2K: 5,
  firebox_forced_W_per_m2K: 7,
  /**
   * Gas to passage wall: still, forced at full flow, and radiation of CO2 and H2O at 400 °C. Their sum is what EN 15544, 4.8.2
   * (from memory) implies:
   * 550 exp(-0.83) = 240 °C over the least length, against walls near 150 °C. A straight smooth flue has 7.6 (EN 13384-1); bends
   * double it.
   */
  passage_still_W_per_m2K: 3,
  passage_forced_W_per_m2K: 12,
  passage_gas_radiation_W_per_m2K: 7,
  /**
   * Flame radiation that glass lets through, glass emissivity, its outer convection and the air that washes its inner side,
   * W/m2K. Handbooks (from memory).
   */
  glass_transmission: 0.35,
  glass_emissivity: 0.85,
  glass_outside_W_per_m2K: 6,
  glass_wash_W_per_m2K: 15,
  /** Height of the facing for free convection. Hardly matters. */
  face_height_m: 1.5,
  face_emissivity: 0.9,
  /**
   * Air the fire draws from the room adds this share of itself to the air change: unbalanced exhaust, ASHRAE Fundamentals
   * ch. 16 (from memory).
   */
  added_air_share: 0.5,
} as const;
export type ExchangeParameters = { readonly [key in keyof typeof EXCHANGE]: number };

/** Heat of flue gas per kg above 0 °C, J/kg: mean capacity 1.053 kJ/kgK to 100 °C, 1.13 to 700 °C (wood, air ratio 2, from CoolProp). */
const enthalpy = (t_C: number): number => (1040 + 0.127 * t_C) * t_C;
const temperatureOf = (h: number): number => (-1040 + Math.sqrt(1040 * 1040 + 4 * 0.127 * h)) / (2 * 0.127);
const GAS_J_PER_KGK = 1090;
const AIR_J_PER_KGK = 1006;

/** What one step is told; constant within the step except the outside temperature. */
export interface Draw {
  released_W: number;
  gas_kg_per_s: number;
  /** 0 to 1: how much of the flame's emissivity there is */
  flame: number;
  outside_C: number;
  outsideAtStage_C: number;
}

/** Sums since the start, J, and the latest readings. */
export interface Tally {
  given_J: number;
  door_J: number;
  flue_J: number;
  house_loss_J: number;
  drawn_air_J: number;
  gains_J: number;
  output_W: number;
  facing_C: number;
  firebox_C: number;
  glass_C: number;
  flue_C: number;
}

export interface Exchange {
  readonly draw: Draw;
  readonly tally: Tally;
  readonly flows: Flows;
  /** The stepper in use; set it before a step. */
  use(stepper: Stepper): void;
}

const fourth = (kelvin: number): number => {
  const square = kelvin * kelvin;
  return square * square;
};

const cube = (kelvin: number): number => kelvin * kelvin * kelvin;

/** Bring the exchange of one heater and room to life. It keeps its last answer as the next first guess. */
export function exchangeOf(
  heater: HeaterModel,
  room: { other_heat_W: number; heat_loss_W_per_K: number },
  full_kg_per_s: number,
  p: ExchangeParameters = EXCHANGE,
): Exchange {
  const draw: Draw = { released_W: 0, gas_kg_per_s: 0, flame: 0, outside_C: 0, outsideAtStage_C: 0 };
  const tally: Tally = {
    given_J: 0,
    door_J: 0,
    flue_J: 0,
    house_loss_J: 0,
    drawn_air_J: 0,
    gains_J: 0,
    output_W: 0,
    facing_C: 20,
    firebox_C: 20,
    glass_C: 20,
    flue_C: 20,
  };
  const [fireFace_m2, passageFace_m2] = heater.outer_m2;
  const last = new Float64Array(6);
  const t = new Float64Array(6);
  let R: Float64Array = new Float64Array(36);

  let exit_K = 300;
  let glass_K = 300;
  let toFire_W = 0;
  let toPassage_W = 0;
  let fireSlope = 0;
  let passageSlope = 0;
  let doorToAir_W = 0;
  let doorToFabric_W = 0;
  let flue_W = 0;

  /** Flame, glass and gas for given skins: flows into both skins, their slopes, the door's heat, the flue's loss. */
  const gas = (fireSkin_C: number, passageSkin_C: number, air_C: number, fabric_C: number): void => {
    const { released_W, gas_kg_per_s: m, flame } = draw;
    const intake_C = heater.outside_air ? draw.outside_C : air_C;
    const e = p.flame_emissivity * flame;
    const skin4 = fourth(fireSkin_C + KELVIN);
    const flow = m / full_kg_per_s;
    const hot_K = m > 0 ? temperatureOf(enthalpy(intake_C) + released_W / m) + KELVIN : fireSkin_C + KELVIN;
    const flame4 = hot_K * hot_K * exit_K * exit_K;

    const fabric4 = fourth(fabric_C + KELVIN);
    const seen = STEFAN_BOLTZMANN * p.glass_emissivity * ((1 - e) * skin4 + e * (1 - p.glass_transmission) * flame4);
    const wash = p.glass_wash_W_per_m2K * Math.min(1, flow);
    for (let i = 0; i < 2; i++) {
      const third = 4 * STEFAN_BOLTZMANN * p.glass_emissivity * cube(glass_K);
      const excess =
        seen +
        STEFAN_BOLTZMANN * p.glass_emissivity * (fabric4 - 2 * fourth(glass_K)) -
        p.glass_outside_W_per_m2K * (glass_K - KELVIN - air_C) -
        wash * (glass_K - KELVIN - intake_C);
      glass_K += excess / (2 * third + p.glass_outside_W_per_m2K + wash);
    }
    const through = STEFAN_BOLTZMANN * p.glass_transmission * e * flame4;
    doorToAir_W = heater.door_m2 * p.glass_outside_W_per_m2K * (glass_K - KELVIN - air_C);
    doorToFabric_W = heater.door_m2 * (through + STEFAN_BOLTZMANN * p.glass_emissivity * (fourth(glass_K) - fabric4));
    const door_W = doorToAir_W + doorToFabric_W;
    const fromFlame_W = door_W * ((e * flame4) / (e * flame4 + (1 - e) * skin4));

    if (m === 0) {
      toFire_W = -door_W;
      fireSlope = -4 * STEFAN_BOLTZMANN * p.glass_emissivity * heater.door_m2 * cube(fireSkin_C + KELVIN);
      toPassage_W = passageSlope = flue_W = 0;
      return;
    }
    const h1 = (p.firebox_still_W_per_m2K + p.firebox_forced_W_per_m2K * flow) * heater.firebox_m2;
    const radiating = STEFAN_BOLTZMANN * e * heater.firebox_m2;
    const supply = released_W + m * enthalpy(intake_C) - fromFlame_W + radiating * skin4 + h1 * fireSkin_C;
    for (let i = 0; i < 20; i++) {
      const exit_C = exit_K - KELVIN;
      const excess = supply - m * enthalpy(exit_C) - radiating * hot_K * hot_K * exit_K * exit_K - h1 * exit_C;
      const change = excess / (m * (1040 + 0.254 * exit_C) + 2 * radiating * hot_K * hot_K * exit_K + h1);
      exit_K += change;
      if (Math.abs(change) < 1e-9) break;
    }
    const exit_C = exit_K - KELVIN;
    toFire_W = radiating * (hot_K * hot_K * exit_K * exit_K - skin4) + h1 * (exit_C - fireSkin_C) - (door_W - fromFlame_W);
    fireSlope = -(4 * radiating * cube(fireSkin_C + KELVIN) + h1);

    const h2 = p.passage_still_W_per_m2K + p.passage_forced_W_per_m2K * flow ** 0.8 + p.passage_gas_radiation_W_per_m2K * flame;
    const kept = Math.exp((-h2 * heater.passage_m2) / (m * GAS_J_PER_KGK));
    const flue_C = passageSkin_C + (exit_C - passageSkin_C) * kept;
    toPassage_W = m * (enthalpy(exit_C) - enthalpy(flue_C));
    passageSlope = -m * GAS_J_PER_KGK * (1 - kept);
    flue_W = m * (enthalpy(flue_C) - enthalpy(intake_C));
    tally.flue_C = flue_C;
    tally.firebox_C = Math.sqrt(hot_K * exit_K) - KELVIN;
  };

  const flows: Flows = (bare, watts, weight_s, reach) => {
    const outside_C = reach === 1 ? draw.outside_C : draw.outsideAtStage_C;
    const drawn_W_per_K = heater.outside_air ? 0 : p.added_air_share * draw.gas_kg_per_s * AIR_J_PER_KGK;
    t[0] = bare[0]! + R[0]! * last[0]! + R[1]! * last[1]!;
    t[1] = bare[1]! + R[6]! * last[0]! + R[7]! * last[1]!;
    t[2] = bare[2]! + R[14]! * last[2]! + R[15]! * last[3]!;
    t[3] = bare[3]! + R[20]! * last[2]! + R[21]! * last[3]!;
    t[4] = bare[4]! + R[28]! * last[4]! + R[29]! * last[5]!;
    t[5] = bare[5]! + R[34]! * last[4]! + R[35]! * last[5]!;
    let convected_W = 0;
    let radiated_W = 0;
    for (let round = 0; round < 30; round++) {
      const air_C: number = t[4]!;
      const fabric_C: number = t[5]!;
      gas(t[0]!, t[2]!, air_C, fabric_C);
      const c1: number = fireFace_m2 * convection_W_per_m2K(t[1]!, air_C, p.face_height_m);
      const r1: number = fireFace_m2 * radiation_W_per_m2K(t[1]!, fabric_C, p.face_emissivity);
      const c3: number = passageFace_m2 * convection_W_per_m2K(t[3]!, air_C, p.face_height_m);
      const r3: number = passageFace_m2 * radiation_W_per_m2K(t[3]!, fabric_C, p.face_emissivity);

      const fireFace_C: number = (bare[1]! + R[6]! * toFire_W + R[7]! * (c1 * air_C + r1 * fabric_C)) / (1 + R[7]! * (c1 + r1));
      const passageFace_C: number = (bare[3]! + R[20]! * toPassage_W + R[21]! * (c3 * air_C + r3 * fabric_C)) / (1 + R[21]! * (c3 + r3));
      convected_W = c1 * (fireFace_C - air_C) + c3 * (passageFace_C - air_C);
      radiated_W = r1 * (fireFace_C - fabric_C) + r3 * (passageFace_C - fabric_C);
      watts[1] = -(c1 * (fireFace_C - air_C) + r1 * (fireFace_C - fabric_C));
      watts[3] = -(c3 * (passageFace_C - air_C) + r3 * (passageFace_C - fabric_C));
      watts[0] = toFire_W;
      watts[2] = toPassage_W;
      watts[4] = convected_W + doorToAir_W + room.other_heat_W - drawn_W_per_K * (air_C - outside_C);
      watts[5] = radiated_W + doorToFabric_W;

      const fireSkin_C: number = (bare[0]! + R[1]! * watts[1]! + R[0]! * (toFire_W - fireSlope * t[0]!)) / (1 - R[0]! * fireSlope);
      const passageSkin_C: number =
        (bare[2]! + R[15]! * watts[3]! + R[14]! * (toPassage_W - passageSlope * t[2]!)) / (1 - R[14]! * passageSlope);
      const airSlope = c1 + c3 + heater.door_m2 * p.glass_outside_W_per_m2K + drawn_W_per_K;
      const nextAir_C: number = air_C + (bare[4]! + R[28]! * watts[4]! + R[29]! * watts[5]! - air_C) / (1 + R[28]! * airSlope);
      const nextFabric_C: number = fabric_C + (bare[5]! + R[34]! * watts[4]! + R[35]! * watts[5]! - fabric_C) / (1 + R[35]! * (r1 + r3));
      const change =
        Math.abs(fireSkin_C - t[0]!) +
        Math.abs(passageSkin_C - t[2]!) +
        Math.abs(fireFace_C - t[1]!) +
        Math.abs(passageFace_C - t[3]!) +
        Math.abs(nextAir_C - air_C) +
        Math.abs(nextFabric_C - fabric_C);
      t[0] = fireSkin_C;
      t[1] = fireFace_C;
      t[2] = passageSkin_C;
      t[3] = passageFace_C;
      t[4] = nextAir_C;
      t[5] = nextFabric_C;
      if (change < TOLERANCE_K) {
        tally.drawn_air_J += weight_s * drawn_W_per_K * (air_C - outside_C);
        break;
      }
    }
    last.set(watts);
    const door_W = doorToAir_W + doorToFabric_W;
    tally.output_W = convected_W + radiated_W + door_W;
    tally.given_J += weight_s * tally.output_W;
    tally.door_J += weight_s * door_W;
    tally.flue_J += weight_s * flue_W;
    tally.gains_J += weight_s * room.other_heat_W;
    tally.house_loss_J += weight_s * room.heat_loss_W_per_K * (bare[4]! + R[28]! * watts[4]! + R[29]! * watts[5]! - outside_C);
    tally.facing_C = (fireFace_m2 * t[1]! + passageFace_m2 * t[3]!) / (fireFace_m2 + passageFace_m2);
    tally.glass_C = glass_K - KELVIN;
  };
  return {
    draw,
    tally,
    flows,
    use: (stepper) => {
      R = stepper.response_K_per_W;
    },
  };
}

/** The rounds stop when the temperatures agree this well, K; energy is conserved whatever it is. */
const TOLERANCE_K = 1e-4;
export const STAGE_SHARE = GAMMA;
