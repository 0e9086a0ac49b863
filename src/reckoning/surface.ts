/** Heat from a warm face to the room: free convection and long-wave radiation. */

export const STEFAN_BOLTZMANN = 5.670374419e-8;
export const KELVIN = 273.15;
const G = 9.80665;

/** Emissivity of brick, render, glazed tile and stone at room temperature: 0.9 to 0.95. VDI Heat Atlas, ISO 6946 uses 0.9. */
export const FACE_EMISSIVITY = 0.9;

/**
 * Coefficient of free convection on a vertical face, W/m2K: Churchill and Chu, all Rayleigh numbers,
 * Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2, air properties at film temperature
 * nu = (13.30 + 0.0936 t) 1e-6 m2/s, k = 0.0243 + 0.000072 t W/mK, Pr = 0.706 (within 1 % of a property library, 0 to 100 °C).
 * @param face_C, air_C either may be the warmer, -30 to 300 °C
 * @param height_m 0.3 to 3 m
 * Worked example: 60 °C in 20 °C, 1.5 m high, is 4.64 W/m2K.
 */
export function convection_W_per_m2K(face_C: number, air_C: number, height_m: number): number {
  const film_C = (face_C + air_C) / 2;
  const viscosity_m2_per_s = (13.3 + 0.0936 * film_C) * 1e-6;
  const conductivity_W_per_mK = 0.0243 + 0.000072 * film_C;
  const rayleigh = (G * Math.abs(face_C - air_C) * height_m * height_m * height_m * PRANDTL) / ((film_C + KELVIN) * viscosity_m2_per_s * viscosity_m2_per_s);
  const root = 0.825 + CHURCHILL_CHU * Math.cbrt(Math.sqrt(rayleigh));
  return (root * root * conductivity_W_per_mK) / height_m;
}
const PRANDTL = 0.706;
const CHURCHILL_CHU = 0.387 / (1 + (0.492 / PRANDTL) ** (9 / 16)) ** (8 / 27);

/**
 * Coefficient of radiation between a face and surroundings that enclose it, W/m2K: h_r = e s (T1^2 + T2^2)(T1 + T2), kelvin.
 * Exact for a small grey body in large surroundings. Source: ISO 6946 annex C. Worked example: both at 20 °C, e 0.9, is 5.14 W/m2K.
 */
export function radiation_W_per_m2K(face_C: number, surroundings_C: number, emissivity: number = FACE_EMISSIVITY): number {
  const a = face_C + KELVIN;
  const b = surroundings_C + KELVIN;
  return emissivity * STEFAN_BOLTZMANN * (a * a + b * b) * (a + b);
}
