/**
 * Transient conduction against closed solutions and grid-converged references. Carslaw and Jaeger; Incropera 5.5 to 5.8;
 * frozen results of scipy 1.17.1.
 */
import { describe, expect, it } from "vitest";
import * as conduction from "../../src/reckoning/conduction.ts";
import { type Layer, type Wall, wallOf } from "../../src/reckoning/conduction.ts";
import { settled } from "../../src/reckoning/settled.ts";
import { FIREBRICK, HOUR, layer, marcher, PLAIN } from "./march.ts";

const march = marcher(conduction);

/** Series of a slab, inner face adiabatic, outer h: sum C_n exp(-z_n^2 Fo) cos(z_n x/L), z tan z = Bi. */
function coolingSeries(x_over_L: number, Fo: number, Bi: number): number {
  let sum = 0;
  for (let n = 0; n < 60; n++) {
    let low = n * Math.PI;
    let high = low + Math.PI / 2;
    for (let i = 0; i < 200; i++) {
      const z = (low + high) / 2;
      if (z * Math.sin(z) - Bi * Math.cos(z) > 0 === (n % 2 === 0)) high = z;
      else low = z;
    }
    const z = (low + high) / 2;
    sum += ((4 * Math.sin(z)) / (2 * z + Math.sin(2 * z))) * Math.exp(-z * z * Fo) * Math.cos(z * x_over_L);
  }
  return sum;
}

describe("slab of 0.12 m, inner face adiabatic, h 10, 300 to 20 °C (Fourier series)", () => {
  const outerAt: [hours: number, face_C: number][] = [
    [0.5, 228.4],
    [1, 207.07],
    [2, 181.91],
    [4, 149.11],
    [8, 103.66],
    [12, 74.23],
    [24, 34.78],
  ];
  it("gives the outer face within 0.3 K and the inner within 0.3 K", () => {
    const wall = wallOf([layer(0.12, FIREBRICK, 48)]);
    const seen = new Map<number, [number, number]>();
    march(wall, 300, {}, { h_W_per_K: 10, ambient_C: 20 }, 60, 24 * HOUR, (t, T) => seen.set(Math.round(t), [T[0]!, T.at(-1)!]));
    for (const [hours, face_C] of outerAt) expect(Math.abs(seen.get(hours * HOUR)![1] - face_C)).toBeLessThan(0.3);
    expect(Math.abs(seen.get(2 * HOUR)![0] - 272.2)).toBeLessThan(0.3);
    expect(Math.abs(seen.get(8 * HOUR)![0] - 152.54)).toBeLessThan(0.3);
  });

  it("its one-term constants are those of the table (Incropera 5.1)", () => {
    // zeta1 0.8603336 and C1 1.119132 at Bi 1: at a large Fo only the first term is left
    expect(coolingSeries(0, 2, 1)).toBeCloseTo(1.119132 * Math.exp(-(0.8603336 ** 2) * 2), 6);
  });
});

describe("convergence at the order of the scheme", () => {
  const Bi = (10 * 0.12) / 1.1;
  const Fo = (hours: number): number => (5.5e-7 * hours * HOUR) / 0.12 ** 2;
  const exact = (x: number, hours: number): number => 20 + 280 * coolingSeries(x, Fo(hours), Bi);
  /** start from the exact field at 1 h, so that the start is as smooth as the scheme assumes */
  const error = (cells: number, step_s: number): number => {
    const wall = wallOf([layer(0.12, FIREBRICK, cells)]);
    const start = Float64Array.from({ length: cells + 1 }, (_, i) => exact(i / cells, 1));
    const end = march(wall, start, {}, { h_W_per_K: 10, ambient_C: 20 }, step_s, 3 * HOUR);
    return Math.max(...end.map((value, i) => Math.abs(value - exact(i / cells, 4))));
  };

  const orders = (errors: readonly number[]): number[] => errors.slice(1).map((one, i) => Math.log2(errors[i]! / one));

  it("halving the grid quarters the error against the series: orders 2.00", () => {
    const errors = [6, 12, 24, 48].map((cells) => error(cells, 15));
    for (const order of orders(errors)) expect(Math.abs(order - 2)).toBeLessThan(0.05);
    expect(errors[2]).toBeLessThan(0.02);
  });

  it("halving the step quarters the error against the series: orders 2.00 to 2.02", () => {
    // so many cells that the error of the grid is a hundredth of what is looked at
    const errors = [3600, 1800, 900, 450].map((step_s) => error(768, step_s));
    for (const order of orders(errors)) expect(Math.abs(order - 2)).toBeLessThan(0.05);
    expect(errors[2]).toBeLessThan(0.005);
  });

  it("a shock dies away under long steps: what it overshoots in the first is gone by the fourth (L-stable)", () => {
    const wall = wallOf([layer(0.12, FIREBRICK, 48)]);
    const ranges: [number, number][] = [];
    march(wall, 300, {}, { h_W_per_K: 1e6, ambient_C: 20 }, 900, 6 * HOUR, (_, T) => ranges.push([Math.min(...T), Math.max(...T)]));
    expect(ranges[0]![0]).toBeGreaterThan(20 - 0.25 * 280);
    for (const [low, high] of ranges.slice(3)) {
      expect(low).toBeGreaterThan(20 - 0.5);
      expect(high).toBeLessThan(300);
    }
    expect(ranges.at(-1)![1]).toBeLessThan(ranges[8]![1]);
  });
});

describe("semi-infinite solid, k 0.9, rho 1900, cp 900", () => {
  const deep = (): Wall => wallOf([layer(0.6, PLAIN, 600)]);
  it("constant flux of 3000 W/m2", () => {
    const seen = new Map<number, Float64Array>();
    march(deep(), 20, { flux_W: () => 3000 }, {}, 10, 2 * HOUR, (t, T) => {
      if (t % 900 === 0) seen.set(t, Float64Array.from(T));
    });
    const rows: [number, number, number][] = [
      [0.25, 0, 101.86],
      [0.5, 0, 135.77],
      [1, 0, 183.72],
      [2, 0, 251.54],
      [2, 50, 122.04],
      [2, 100, 56.14],
      [1, 20, 125.62],
    ];
    for (const [hours, mm, C] of rows) expect(Math.abs(seen.get(hours * HOUR)![mm]! - C)).toBeLessThan(0.005 * (C - 20) + 0.2);
  });
  it("gas of 700 °C, h 35", () => {
    const seen = new Map<number, Float64Array>();
    march(deep(), 20, { h_W_per_K: 35, ambient_C: 700 }, {}, 10, 2 * HOUR, (t, T) => {
      if (t % 900 === 0) seen.set(t, Float64Array.from(T));
    });
    const rows: [number, number, number][] = [
      [0.5, 0, 442.14],
      [1, 0, 501.0],
      [2, 0, 551.09],
      [1, 50, 191.08],
      [2, 100, 131.26],
    ];
    for (const [hours, mm, C] of rows) expect(Math.abs(seen.get(hours * HOUR)![mm]! - C)).toBeLessThan(0.005 * (C - 20) + 0.3);
  });
});

it("slab of 0.15 m, 3000 W/m2 into one face, the other adiabatic (Carslaw and Jaeger series)", () => {
  const seen = new Map<number, Float64Array>();
  march(wallOf([layer(0.15, PLAIN, 150)]), 20, { flux_W: () => 3000 }, {}, 20, 4 * HOUR, (t, T) => {
    if (t % 1800 === 0) seen.set(t, Float64Array.from(T));
  });
  const rows: [number, number, number, number][] = [
    [2, 251.62, 83.41, 40.07],
    [4, 351.44, 167.59, 108.73],
    [1, 183.72, 42.18, 22.0],
  ];
  for (const [hours, hot, mid, back] of rows) {
    const T = seen.get(hours * HOUR)!;
    expect(Math.abs(T[0]! - hot)).toBeLessThan(0.2);
    expect(Math.abs(T[75]! - mid)).toBeLessThan(0.2);
    expect(Math.abs(T[150]! - back)).toBeLessThan(0.2);
  }
  const wall = wallOf([layer(0.15, PLAIN, 150)]);
  const T = seen.get(4 * HOUR)!;
  const mean = wall.capacity_J_per_K.reduce((sum, C, i) => sum + C * T[i]!, 0) / wall.capacity_J_per_K.reduce((sum, C) => sum + C, 0);
  expect(mean).toBeCloseTo(188.4211, 3);
});

describe("fire of 4000 W/m2 for 1.5 h through a wall, h 10 to 20 °C (method of lines, BDF, grid-converged)", () => {
  const walls: Record<string, { layers: Layer[]; peak_C: number; peak_h: number; half_h: number; quarter_h: number; inner_C?: number }> = {
    "firebrick 120 mm": {
      layers: [layer(0.12, FIREBRICK, 24)],
      peak_C: 72.55,
      peak_h: 3.18,
      half_h: 7.04,
      quarter_h: 13.43,
      inner_C: 243.81,
    },
    "firebrick 65 + clay brick 110 mm": {
      layers: [layer(0.065, FIREBRICK, 13), layer(0.11, [0.78, 1760, 800], 22)],
      peak_C: 51.91,
      peak_h: 5.1,
      half_h: 11.61,
      quarter_h: 22.0,
      inner_C: 247.26,
    },
    "soapstone 120 mm": { layers: [layer(0.12, [6.4, 2980, 980], 24)], peak_C: 72.06, peak_h: 1.98, half_h: 7.36, quarter_h: 14.54 },
    "firebrick 60 + plaster 20 mm": {
      layers: [layer(0.06, FIREBRICK, 12), layer(0.02, [0.8, 1600, 1000], 6)],
      peak_C: 107.2,
      peak_h: 2.13,
      half_h: 4.15,
      quarter_h: 8.03,
    },
  };
  it.each(Object.entries(walls))("%s", (_, { layers, peak_C, peak_h, half_h, quarter_h, inner_C }) => {
    const faces: [number, number][] = [[0, 20]];
    let inner = 0;
    march(wallOf(layers), 20, { flux_W: (t) => (t < 1.5 * HOUR ? 4000 : 0) }, { h_W_per_K: 10, ambient_C: 20 }, 60, 48 * HOUR, (t, T) => {
      faces.push([t / HOUR, T.at(-1)!]);
      inner = Math.max(inner, T[0]!);
    });
    const top = faces.reduce((best, one, i) => (one[1] > faces[best]![1] ? i : best), 0);
    const after = (share: number): number => faces.slice(top).find(([, C]) => C - 20 < share * (faces[top]![1] - 20))![0] - faces[top]![0];
    expect(Math.abs(faces[top]![1] - peak_C)).toBeLessThan(Math.max(0.5, 0.01 * (peak_C - 20)));
    expect(Math.abs(faces[top]![0] - peak_h)).toBeLessThan(10 / 60);
    expect(Math.abs(after(0.5) / half_h - 1)).toBeLessThan(0.02);
    expect(Math.abs(after(0.25) / quarter_h - 1)).toBeLessThan(0.02);
    if (inner_C !== undefined) expect(Math.abs(inner - inner_C)).toBeLessThan(2.3);
  });

  it("once a day until it repeats: mean rise is mean flux over h", () => {
    const wall = wallOf([layer(0.12, FIREBRICK, 24)]);
    const day = (state: Float64Array, each?: (t: number, T: Float64Array) => void): Float64Array =>
      march(wall, state, { flux_W: (t) => (t < 1.5 * HOUR ? 4000 : 0) }, { h_W_per_K: 10, ambient_C: 20 }, 60, 24 * HOUR, each);
    const start = settled((state) => day(state), new Float64Array(25).fill(20), 1e-4);
    const faces: number[] = [];
    day(start, (_, T) => faces.push(T.at(-1)!));
    expect(Math.abs(Math.max(...faces) - 77.08)).toBeLessThan(0.5);
    expect(Math.abs(Math.min(...faces) - 26.2)).toBeLessThan(0.5);
    expect(faces.reduce((sum, C) => sum + C, 0) / faces.length).toBeCloseTo(45, 1);
  });
});

describe("layers", () => {
  it("a hollow cylinder's steady heat is 2 pi k L (T1 - T2) / ln(r2/r1) (Incropera 3.3)", () => {
    const [r1, r2, k] = [0.1, 0.3, 1.2];
    const wall = wallOf([{ ...layer(r2 - r1, [k, 1000, 1000], 200), area_m2: [2 * Math.PI * r1, 2 * Math.PI * r2] }]);
    const resistance = wall.link_W_per_K.reduce((sum, G) => sum + 1 / G, 0);
    expect(1 / resistance / ((2 * Math.PI * k) / Math.log(r2 / r1))).toBeCloseTo(1, 4);
    const volume = wall.capacity_J_per_K.reduce((sum, C) => sum + C, 0) / 1e6;
    expect(volume).toBeCloseTo(Math.PI * (r2 ** 2 - r1 ** 2), 9);
  });
  it("a wall's resistance is the sum of its layers and joints (ISO 6946)", () => {
    const wall = wallOf([{ ...layer(0.06, FIREBRICK, 7), growth: 1.4, joint_m2K_per_W: 0.05 }, layer(0.11, [0.78, 1760, 800], 5)]);
    expect(wall.link_W_per_K.reduce((sum, G) => sum + 1 / G, 0)).toBeCloseTo(0.06 / 1.1 + 0.05 + 0.11 / 0.78, 9);
  });
  it("refuses a layer without thickness", () => {
    expect(() => wallOf([layer(0, FIREBRICK, 3)])).toThrow(RangeError);
  });
});
