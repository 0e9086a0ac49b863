/** A joint order summed: solid and stacked cubic metres and dry kilograms, each with what it may be off by. Pure. */

export interface Ordered {
  readonly volume_m3_solid: number;
  readonly volume_m3_stacked: number;
  /** oven-dry; null where no density is known */
  readonly dry_kg: number | null;
  readonly low_kg: number | null;
  readonly high_kg: number | null;
}

export interface OrderSum {
  readonly volume_m3_solid: number;
  readonly volume_m3_stacked: number;
  readonly dry_kg: number;
  readonly low_kg: number;
  readonly high_kg: number;
  /** lines whose weight is not in the sum of kilograms */
  readonly unweighed: number;
}

export function sumOf(lines: readonly Ordered[]): OrderSum {
  const sum = (key: "volume_m3_solid" | "volume_m3_stacked" | "dry_kg" | "low_kg" | "high_kg"): number => lines.reduce((total, line) => total + (line[key] ?? 0), 0);
  return {
    volume_m3_solid: sum("volume_m3_solid"), volume_m3_stacked: sum("volume_m3_stacked"), dry_kg: sum("dry_kg"), low_kg: sum("low_kg"), high_kg: sum("high_kg"),
    unweighed: lines.filter((line) => line.dry_kg === null).length,
  };
}
