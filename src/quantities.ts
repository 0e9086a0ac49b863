/**
 * Units: what a figure is measured in, how it is converted and how a reader sees it.
 * Everything inside Gleed is metric; US customary units exist only where a person writes or reads.
 * Factors are exact by definition (NIST SP 811, appendix B), the cord by NIST Handbook 130 section 2.4.
 */

export type Dimension =
  | "mass" | "volume" | "length" | "temperature" | "temperature_difference" | "energy" | "power" | "share"
  | "duration" | "pressure" | "area" | "heat_loss" | "energy_per_mass" | "density" | "money";

interface Unit {
  readonly dimension: Dimension;
  /** value_in_base = value * factor + offset */
  readonly factor: number;
  readonly offset?: number;
  readonly symbol: string;
}

const LB_KG = 0.45359237;
const FT_M = 0.3048;
const FT3_M3 = FT_M ** 3;

export const UNITS = {
  kg: { dimension: "mass", factor: 1, symbol: "kg" },
  g: { dimension: "mass", factor: 0.001, symbol: "g" },
  t: { dimension: "mass", factor: 1000, symbol: "t" },
  lb: { dimension: "mass", factor: LB_KG, symbol: "lb" },
  oz: { dimension: "mass", factor: LB_KG / 16, symbol: "oz" },
  st: { dimension: "mass", factor: LB_KG * 14, symbol: "st" },
  m3: { dimension: "volume", factor: 1, symbol: "m³" },
  l: { dimension: "volume", factor: 0.001, symbol: "l" },
  ft3: { dimension: "volume", factor: FT3_M3, symbol: "ft³" },
  cord: { dimension: "volume", factor: 128 * FT3_M3, symbol: "cord" },
  m: { dimension: "length", factor: 1, symbol: "m" },
  cm: { dimension: "length", factor: 0.01, symbol: "cm" },
  mm: { dimension: "length", factor: 0.001, symbol: "mm" },
  ft: { dimension: "length", factor: FT_M, symbol: "ft" },
  in: { dimension: "length", factor: FT_M / 12, symbol: "in" },
  C: { dimension: "temperature", factor: 1, symbol: "°C" },
  F: { dimension: "temperature", factor: 5 / 9, offset: -160 / 9, symbol: "°F" },
  K: { dimension: "temperature_difference", factor: 1, symbol: "K" },
  dF: { dimension: "temperature_difference", factor: 5 / 9, symbol: "°F" },
  kWh: { dimension: "energy", factor: 1, symbol: "kWh" },
  MJ: { dimension: "energy", factor: 1 / 3.6, symbol: "MJ" },
  Btu: { dimension: "energy", factor: 1055.05585262 / 3.6e6, symbol: "Btu" },
  kW: { dimension: "power", factor: 1, symbol: "kW" },
  W: { dimension: "power", factor: 0.001, symbol: "W" },
  "Btu/h": { dimension: "power", factor: 1055.05585262 / 3.6e6, symbol: "Btu/h" },
  pct: { dimension: "share", factor: 1, symbol: "%" },
  h: { dimension: "duration", factor: 1, symbol: "h" },
  min: { dimension: "duration", factor: 1 / 60, symbol: "min" },
  day: { dimension: "duration", factor: 24, symbol: "d" },
  Pa: { dimension: "pressure", factor: 1, symbol: "Pa" },
  inH2O: { dimension: "pressure", factor: 249.08891, symbol: "inH₂O" },
  m2: { dimension: "area", factor: 1, symbol: "m²" },
  ft2: { dimension: "area", factor: FT_M ** 2, symbol: "ft²" },
  "W/K": { dimension: "heat_loss", factor: 1, symbol: "W/K" },
  "kWh/kg": { dimension: "energy_per_mass", factor: 1, symbol: "kWh/kg" },
  "Btu/lb": { dimension: "energy_per_mass", factor: (1055.05585262 / 3.6e6) / LB_KG, symbol: "Btu/lb" },
  "kg/m3": { dimension: "density", factor: 1, symbol: "kg/m³" },
} as const satisfies Record<string, Unit>;

export type UnitId = keyof typeof UNITS;
export type UnitSystem = "metric" | "us";

/** A figure with its unit. `low` and `high`, when present, are the honest range in the same unit. */
export interface Quantity {
  readonly value: number;
  readonly unit: UnitId;
  readonly low?: number;
  readonly high?: number;
  /** digits after the point; chosen from the size of the figure when absent */
  readonly digits?: number;
}

export const q = (value: number, unit: UnitId, more: { low?: number; high?: number; digits?: number } = {}): Quantity => ({ value, unit, ...more });

export const isQuantity = (thing: unknown): thing is Quantity =>
  typeof thing === "object" && thing !== null && "unit" in thing && "value" in thing && (thing as Quantity).unit in UNITS;

/** Convert between two units of one dimension. @throws RangeError when the dimensions differ. */
export function convert(value: number, from: UnitId, to: UnitId): number {
  if (from === to) return value;
  const a: Unit = UNITS[from];
  const b: Unit = UNITS[to];
  if (a.dimension !== b.dimension) throw new RangeError(`${from} is a ${a.dimension}, ${to} a ${b.dimension}`);
  return (value * a.factor + (a.offset ?? 0) - (b.offset ?? 0)) / b.factor;
}

/** What a US reader sees in place of the metric unit. */
const US_FOR: Partial<Record<UnitId, UnitId>> = {
  kg: "lb", t: "lb", g: "oz", m3: "cord", m: "ft", cm: "in", mm: "in", C: "F", K: "dF", m2: "ft2", "kWh/kg": "Btu/lb",
};

/** Figures per unit that make sense to a reader; beyond them the digits would be invented. */
const DIGITS: Partial<Record<UnitId, number>> = {
  kg: 1, g: 0, t: 2, lb: 0, oz: 0, C: 0, F: 0, K: 0, dF: 0, pct: 0, h: 1, min: 0, Pa: 1, kWh: 0, kW: 1, W: 0, m3: 2, cord: 2, ft3: 0,
  m: 2, cm: 0, mm: 1, ft: 1, in: 1, m2: 1, ft2: 0, "W/K": 0, "kWh/kg": 2, "Btu/lb": 0, "kg/m3": 0, day: 0,
};

const seen = new Map<string, Intl.NumberFormat>();
function number(value: number, locale: string, digits: number): string {
  const key = `${locale}/${digits}`;
  let format = seen.get(key);
  if (!format) {
    format = new Intl.NumberFormat(locale, { maximumFractionDigits: digits });
    seen.set(key, format);
  }
  return format.format(value).replace(/^-(?=[\d.,]+$)/, "−");
}

export interface Reader {
  readonly locale: string;
  readonly system: UnitSystem;
}

/** The quantity in the reader's own unit system. */
export function forReader(quantity: Quantity, system: UnitSystem): Quantity {
  const target = system === "us" ? US_FOR[quantity.unit] : undefined;
  if (!target) return quantity;
  const turn = (v: number): number => convert(v, quantity.unit, target);
  const { digits: _metricDigits, low, high, value } = quantity;
  return { value: turn(value), unit: target, ...(low === undefined ? {} : { low: turn(low) }), ...(high === undefined ? {} : { high: turn(high) }) };
}

/** "12.5 kg", "27 lb", "18 %", "6 to 8 kg": value, space, symbol (SI brochure 5.4.3). */
export function format(quantity: Quantity, reader: Reader): string {
  const shown = forReader(quantity, reader.system);
  const digits = shown.digits ?? DIGITS[shown.unit] ?? 2;
  const symbol = UNITS[shown.unit].symbol;
  const text = (v: number): string => number(v, reader.locale, digits);
  if (shown.low !== undefined && shown.high !== undefined && text(shown.low) !== text(shown.high)) {
    return `${text(shown.value)} ${symbol} (${text(shown.low)}–${text(shown.high)})`;
  }
  return `${text(shown.value)} ${symbol}`;
}

/** A bare number as the reader writes it. */
export const formatNumber = (value: number, reader: Reader, digits = 2): string => number(value, reader.locale, digits);
