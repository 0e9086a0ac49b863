/** A house that nobody fires in: how cold it gets, and how long firing takes to bring it back. One capacity, one loss. */

export interface IdleHouse {
  readonly heat_loss_W_per_K: number;
  readonly heat_capacity_kWh_per_K: number;
  /** heat that stays on while nobody is there */
  readonly other_heat_W: number;
  /** mean outside */
  readonly outside_C: number;
}

/** Time constant, h: capacity over loss. EN ISO 13790, 12.2.1.3 (from memory). Worked example: 6 kWh/K and 150 W/K are 40 h. */
export const timeConstant_h = ({ heat_capacity_kWh_per_K, heat_loss_W_per_K }: IdleHouse): number => (1000 * heat_capacity_kWh_per_K) / heat_loss_W_per_K;

const rest_C = (house: IdleHouse, heat_W: number): number => house.outside_C + heat_W / house.heat_loss_W_per_K;

/**
 * Room after some hours without a fire: T = T_rest + (T_start - T_rest) e^(-t / tau).
 * Source: first-order system, as EN ISO 13790 treats intermittent heating. Worked example: 20 °C, outside 0, tau 40 h, 40 h later: 7.4 °C.
 */
export const idleRoom_C = (house: IdleHouse, start_C: number, after_h: number): number => {
  const end_C = rest_C(house, house.other_heat_W);
  return end_C + (start_C - end_C) * Math.exp(-after_h / timeConstant_h(house));
};

/**
 * Hours until a steady heat brings the room up.
 * @param heat_W mean heat of the fires and of everything else
 * @returns h; Infinity when the heat never gets there. Worked example: 5 to 20 °C, outside 0, 4500 W, 150 W/K, tau 40 h: 40 ln(25/10) = 36.7 h.
 */
export function warmUp_h(house: IdleHouse, start_C: number, wanted_C: number, heat_W: number): number {
  if (start_C >= wanted_C) return 0;
  const end_C = rest_C(house, heat_W);
  return end_C > wanted_C ? timeConstant_h(house) * Math.log((end_C - start_C) / (end_C - wanted_C)) : Infinity;
}
