/** A wall marched through time with a linear exchange at each face, by whichever conduction module is handed in. */
import type * as Conduction from "../../src/reckoning/conduction.ts";

export type Material = readonly [k_W_per_mK: number, density_kg_per_m3: number, capacity_J_per_kgK: number];
export const FIREBRICK: Material = [1.1, 2000, 1000];
export const PLAIN: Material = [0.9, 1900, 900];
export const HOUR = 3600;

export const layer = (thickness_m: number, [k, rho, cp]: Material, cells: number): Conduction.Layer => ({
  thickness_m,
  conductivity_W_per_mK: k,
  density_kg_per_m3: rho,
  heat_capacity_J_per_kgK: cp,
  cells,
  area_m2: [1, 1],
});

export interface Face {
  readonly flux_W?: (t_s: number) => number;
  readonly h_W_per_K?: number;
  readonly ambient_C?: number;
}

export type March = (
  wall: Conduction.Wall,
  start: Float64Array | number,
  inner: Face,
  outer: Face,
  step_s: number,
  end_s: number,
  each?: (t_s: number, T: Float64Array) => void,
) => Float64Array;

/** The ports are the wall's two faces. `each` sees the temperatures after every step. */
export const marcher =
  ({ step, stepper, workFor }: Pick<typeof Conduction, "step" | "stepper" | "workFor">): March =>
  (wall, start, inner, outer, step_s, end_s, each = () => {}) => {
    const size = wall.capacity_J_per_K.length;
    const T = typeof start === "number" ? new Float64Array(size).fill(start) : Float64Array.from(start);
    const one = stepper(wall, step_s, [0, size - 1]);
    const R = one.response_K_per_W;
    const work = workFor(size, 2);
    for (let n = 0; n < Math.round(end_s / step_s); n++) {
      const middle_s = (n + 0.5) * step_s;
      const gi = inner.h_W_per_K ?? 0;
      const go = outer.h_W_per_K ?? 0;
      step(
        one,
        T,
        [0, 0],
        (bare, watts) => {
          const qi = (inner.flux_W?.(middle_s) ?? 0) + gi * ((inner.ambient_C ?? 0) - bare[0]!);
          const qo = (outer.flux_W?.(middle_s) ?? 0) + go * ((outer.ambient_C ?? 0) - bare[1]!);
          // (1 + g R) w = q, two by two
          const [a, b, c, d] = [1 + gi * R[0]!, gi * R[1]!, go * R[2]!, 1 + go * R[3]!];
          const det = a * d - b * c;
          watts[0] = (d * qi - b * qo) / det;
          watts[1] = (a * qo - c * qi) / det;
        },
        work,
      );
      each((n + 1) * step_s, T);
    }
    return T;
  };
