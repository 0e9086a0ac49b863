/**
 * A heater and house that share nothing with the reckoning: masonry as five lumps in a row, two rooms, sun, a fixed efficiency.
 * The truth a plan is tried on, up to 30 % off what the owner believes.
 */
export interface Truth {
  readonly heat_loss_W_per_K: number;
  /** the heated room and the rest of the house */
  readonly capacity_kWh_per_K: readonly [number, number];
  readonly between_W_per_K: number;
  readonly gains_W: number;
  readonly sun_W: number;
  readonly masonry_kWh_per_K: number;
  /** between neighbouring lumps */
  readonly through_W_per_K: number;
  readonly face_m2: number;
  readonly efficiency: number;
  readonly load_error: number;
}

export interface House {
  lumps_C: number[];
  room_C: number;
  rest_C: number;
  /** fires alight: heat still to come and the hours it comes in */
  burning: { left_h: number; kW: number }[];
}

const LUMPS = 5;
const STEP_H = 1 / 6;
const FIRE_H = 1.5;
const NET_KWH_PER_KG = 4.2;

export const houseAt = (room_C: number, masonry_C: number): House => ({
  lumps_C: new Array<number>(LUMPS).fill(masonry_C),
  room_C,
  rest_C: room_C - 1,
  burning: [],
});

export function light(house: House, truth: Truth, load_kg: number): void {
  house.burning.push({ left_h: FIRE_H, kW: (load_kg * truth.load_error * NET_KWH_PER_KG * truth.efficiency) / FIRE_H });
}

/** Ten minutes. @param sun 0 to 1 */
export function tick(house: House, truth: Truth, outside_C: number, sun: number): void {
  const { lumps_C } = house;
  let fire_W = 0;
  for (const fire of house.burning) {
    fire_W += 1000 * fire.kW;
    fire.left_h -= STEP_H;
  }
  house.burning = house.burning.filter((fire) => fire.left_h > 1e-9);
  const seconds = STEP_H * 3600;
  const lump_J = (truth.masonry_kWh_per_K * 3.6e6) / LUMPS;
  const face_C = lumps_C[LUMPS - 1]!;
  const rise = Math.max(0, face_C - house.room_C);
  // a face's own rule of thumb: 8 W/m2K at rest, more as it warms
  const given_W = truth.face_m2 * (8 + 0.05 * rise) * (face_C - house.room_C);
  const flows = [fire_W * 0.95];
  for (let i = 1; i < LUMPS; i++) flows.push(truth.through_W_per_K * (lumps_C[i - 1]! - lumps_C[i]!));
  flows.push(given_W);
  house.lumps_C = lumps_C.map((C, i) => C + ((flows[i]! - flows[i + 1]!) * seconds) / lump_J);
  const [room, rest] = truth.capacity_kWh_per_K;
  const across_W = truth.between_W_per_K * (house.room_C - house.rest_C);
  const loss = truth.heat_loss_W_per_K / 2;
  house.room_C +=
    ((given_W + fire_W * 0.05 + truth.gains_W * 0.7 + truth.sun_W * sun - across_W - loss * (house.room_C - outside_C)) * seconds) /
    (room * 3.6e6);
  house.rest_C += ((across_W + truth.gains_W * 0.3 - loss * (house.rest_C - outside_C)) * seconds) / (rest * 3.6e6);
}
