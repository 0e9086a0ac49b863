/** A house without fires, against the exact solution of the first-order system, worked by hand. */
import { expect, it } from "vitest";
import { idleRoom_C, timeConstant_h, warmUp_h } from "../../src/reckoning/absence.ts";

const HOUSE = { heat_loss_W_per_K: 150, heat_capacity_kWh_per_K: 6, other_heat_W: 0, outside_C: 0 };

it("cools with its time constant towards outside, or what other heat holds", () => {
  expect(timeConstant_h(HOUSE)).toBe(40);
  // 20 / e
  expect(idleRoom_C(HOUSE, 20, 40)).toBeCloseTo(7.3576, 4);
  // 1500 W hold 10 K: 10 + 10 / e
  expect(idleRoom_C({ ...HOUSE, other_heat_W: 1500 }, 20, 40)).toBeCloseTo(13.6788, 4);
});

it("warms in the time in which that heat would have cooled, and never where the heat is too small", () => {
  // 40 ln(25 / 10)
  expect(warmUp_h(HOUSE, 5, 20, 4500)).toBeCloseTo(36.6516, 4);
  expect(warmUp_h(HOUSE, 5, 20, 3000)).toBe(Infinity);
  expect(warmUp_h(HOUSE, 21, 20, 0)).toBe(0);
  // there and back again: warm up, then cool as long with the heat gone
  expect(idleRoom_C({ ...HOUSE, other_heat_W: 4500 }, 5, warmUp_h(HOUSE, 5, 20, 4500))).toBeCloseTo(20, 9);
});
