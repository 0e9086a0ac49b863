/** Nonlinear least squares with the standard errors of what was found: the one door to the library behind it. */

export interface Found {
  readonly values: readonly number[];
  /** covariance of the values; Infinity on the diagonal where the data cannot tell */
  readonly covariance: readonly (readonly number[])[];
  readonly residual: number;
  readonly freedom: number;
}

/**
 * Minimise the sum of squared differences between `model(values)` and `measured`.
 * @param steps change of each value for its derivative, in the value's own unit
 */
export function leastSquares(model: (values: readonly number[]) => readonly number[], measured: readonly number[], start: readonly number[], bounds: readonly (readonly [number, number])[], steps: readonly number[]): Found {
  const values = levenbergMarquardt(model, measured, start, bounds, steps);
  const at = model(values);
  const columns = jacobian(model, values, at, steps);
  const freedom = Math.max(1, measured.length - values.length);
  const residual = Math.sqrt(at.reduce((sum, value, i) => sum + (value - measured[i]!) ** 2, 0) / freedom);
  const inverse = inverted(columns.map((a) => columns.map((b) => a.reduce((sum, value, i) => sum + value * b[i]!, 0))));
  return { values, covariance: inverse.map((row) => row.map((value) => value * residual ** 2)), residual, freedom };
}

/** Marquardt's damping on the diagonal, a tenth after a gain and ten times after a loss. */
function levenbergMarquardt(model: (values: readonly number[]) => readonly number[], measured: readonly number[], start: readonly number[], bounds: readonly (readonly [number, number])[], steps: readonly number[]): number[] {
  const sum = (at: readonly number[]): number => at.reduce((total, value, i) => total + (value - measured[i]!) ** 2, 0);
  let values = [...start];
  let at = model(values);
  let damping = 1e-3;
  for (let round = 0; round < 60 && damping < 1e8; round++) {
    const columns = jacobian(model, values, at, steps);
    const normal = columns.map((a, i) => columns.map((b, j) => a.reduce((total, value, n) => total + value * b[n]!, 0) * (i === j ? 1 + damping : 1)));
    const slope = columns.map((a) => a.reduce((total, value, n) => total + value * (measured[n]! - at[n]!), 0));
    const inverse = inverted(normal);
    const next = values.map((value, i) => {
      const [low, high] = bounds[i]!;
      const change = inverse[i]!.reduce((total, cell, j) => total + (Number.isFinite(cell) ? cell * slope[j]! : 0), 0);
      return Math.min(high, Math.max(low, value + change));
    });
    const nextAt = model(next);
    const gain = sum(at) - sum(nextAt);
    if (gain > 0) {
      const done = gain < 1e-7 * sum(at);
      values = next;
      at = nextAt;
      damping /= 10;
      if (done) break;
    } else damping *= 10;
  }
  return values;
}

function jacobian(model: (values: readonly number[]) => readonly number[], values: readonly number[], at: readonly number[], steps: readonly number[]): number[][] {
  return values.map((_, i) => {
    const moved = model(values.map((value, j) => (j === i ? value + steps[i]! : value)));
    return at.map((value, n) => (moved[n]! - value) / steps[i]!);
  });
}

/** Inverse of a small symmetric matrix; what no datum touches gets an infinite variance. */
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
