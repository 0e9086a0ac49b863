/** Nonlinear least squares with the standard errors of what was found: the one door to the library behind it. */
import { levenbergMarquardt } from "ml-levenberg-marquardt";

export interface Found {
  readonly values: readonly number[];
  /** covariance of the values; Infinity on the diagonal where the data cannot tell */
  readonly covariance: readonly (readonly number[])[];
  /** root of the mean squared difference, per degree of freedom */
  readonly residual: number;
  readonly freedom: number;
}

/** A value to be found: where to start, its bounds, and the change that shows its influence. */
export interface Unknown {
  readonly start: number;
  readonly bounds: readonly [low: number, high: number];
  readonly step: number;
}

type Model = (values: readonly number[]) => readonly number[];

/**
 * Minimise the sum of squared differences between `model(values)` and `measured`.
 * Covariance: s2 (J'J)^-1 at the minimum. Worked example: NIST StRD "Norris" gives 1.00211681802045 with a standard error of 4.298e-4.
 */
export function leastSquares(model: Model, measured: readonly number[], unknowns: readonly Unknown[]): Found {
  const x = measured.map((_, i) => i);
  const { parameterValues: values } = levenbergMarquardt(
    { x, y: measured },
    (tried) => {
      const at = model(tried);
      return (i) => at[i]!;
    },
    {
      initialValues: unknowns.map((one) => one.start),
      minValues: unknowns.map((one) => one.bounds[0]),
      maxValues: unknowns.map((one) => one.bounds[1]),
      gradientDifference: unknowns.map((one) => one.step),
      damping: 1e-2,
      improvementThreshold: 1e-7,
      errorTolerance: 1e-9,
      maxIterations: 25,
    },
  );
  const at = model(values);
  const freedom = Math.max(1, measured.length - values.length);
  const residual = Math.sqrt(at.reduce((sum, value, i) => sum + (value - measured[i]!) ** 2, 0) / freedom);
  const columns = unknowns.map(({ step }, i) => {
    const moved = model(values.map((value, j) => (j === i ? value + step : value)));
    return at.map((value, n) => (moved[n]! - value) / step);
  });
  const inverse = inverted(columns.map((a) => columns.map((b) => a.reduce((sum, value, i) => sum + value * b[i]!, 0))));
  return { values, covariance: inverse.map((row) => row.map((value) => value * residual ** 2)), residual, freedom };
}

/** Inverse of a small symmetric matrix, by elimination; what no datum touches gets an infinite variance. */
function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < size; i++) {
    let pivot = i;
    for (let r = i; r < size; r++) if (Math.abs(rows[r]![i]!) > Math.abs(rows[pivot]![i]!)) pivot = r;
    if (Math.abs(rows[pivot]![i]!) < 1e-12) return matrix.map((row, a) => row.map((_, b) => (a === b ? Infinity : 0)));
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    const scale = rows[i]![i]!;
    rows[i] = rows[i]!.map((value) => value / scale);
    for (let r = 0; r < size; r++) {
      const factor = rows[r]![i]!;
      if (r !== i) rows[r] = rows[r]!.map((value, c) => value - factor * rows[i]![c]!);
    }
  }
  return rows.map((row) => row.slice(size));
}
