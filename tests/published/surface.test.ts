/** Heat from a heater's face: 1.5 m high in a room of 20 °C, emissivity 0.9. Frozen results of ht 1.2.0 with CoolProp 8.0.0. */
import { expect, it } from "vitest";
import { convection_W_per_m2K, radiation_W_per_m2K } from "../../src/reckoning/surface.ts";

const ROWS: [face_C: number, hc: number, hr: number, total_W_per_m2: number][] = [
  [30, 3.0948, 5.4118, 85.07],
  [40, 3.8073, 5.6932, 190.01],
  [50, 4.2826, 5.9873, 308.1],
  [60, 4.6431, 6.2942, 437.49],
  [80, 5.1761, 6.95, 727],
  [100, 5.56, 7.66, 1058],
];
it.each(ROWS)("a face of %f °C", (face_C, hc, hr, total) => {
  const convection = convection_W_per_m2K(face_C, 20, 1.5);
  const radiation = radiation_W_per_m2K(face_C, 20, 0.9);
  expect(Math.abs(convection / hc - 1)).toBeLessThan(0.02);
  expect(Math.abs(radiation / hr - 1)).toBeLessThan(0.005);
  expect(Math.abs(((convection + radiation) * (face_C - 20)) / total - 1)).toBeLessThan(0.02);
});

it("black surfaces at 20 °C radiate 5.714 W/m2K (ISO 6946 annex C)", () => {
  expect(radiation_W_per_m2K(20, 20, 1)).toBeCloseTo(5.714, 2);
});

it("does not care which side is the warmer, and is smallest with no difference", () => {
  expect(convection_W_per_m2K(40, 20, 1.5)).toBeCloseTo(convection_W_per_m2K(20, 40, 1.5), 9);
  expect(convection_W_per_m2K(20, 20, 1.5)).toBeLessThan(0.02);
});
