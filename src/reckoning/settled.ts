/** The state a repeated day settles into, without running the weeks it would take. */

/**
 * Fixed point of `day` by Anderson acceleration of the plain repetition (Walker and Ni, SIAM J. Numer. Anal. 49 (2011) 1715).
 * @param day state at the start of a day to state at its end
 * @param tolerance_K largest change over one more day
 * @returns the state after the last day run; it is the best known when `days` are not enough
 */
export function settled(
  day: (state: Float64Array) => Float64Array,
  guess: Float64Array,
  tolerance_K = 0.002,
  days = 20,
  memory = 4,
): Float64Array {
  let state = guess;
  const states: Float64Array[] = [];
  const changes: Float64Array[] = [];
  for (let round = 0; ; round++) {
    const next = day(state);
    const change = next.map((value, i) => value - state[i]!);
    if (change.every((value) => Math.abs(value) < tolerance_K) || round >= days) return next;
    states.push(next);
    changes.push(change);
    if (states.length > memory) {
      states.shift();
      changes.shift();
    }
    state = mix(states, changes);
  }
}

/** The combination of the latest states, weights summing to 1, whose combined change is smallest. */
function mix(states: readonly Float64Array[], changes: readonly Float64Array[]): Float64Array {
  const newest = states.length - 1;
  const differences = changes.slice(0, newest).map((change) => change.map((value, i) => changes[newest]![i]! - value));
  const weights = solveNormal(differences, changes[newest]!);
  return states[newest]!.map((value, i) => value - weights.reduce((sum, weight, j) => sum + weight * (value - states[j]![i]!), 0));
}

/** Least squares by normal equations with a whisper of damping; at most four unknowns. */
function solveNormal(columns: readonly Float64Array[], target: Float64Array): number[] {
  const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const rows = columns.map((a) => [...columns.map((b) => dot(a, b)), dot(a, target)]);
  const size = rows.length;
  for (let i = 0; i < size; i++) rows[i]![i]! *= 1 + 1e-10;
  for (let i = 0; i < size; i++) {
    const pivot = rows[i]![i]!;
    if (pivot < 1e-18) return columns.map(() => 0);
    for (let r = i + 1; r < size; r++) {
      const factor = rows[r]![i]! / pivot;
      for (let c = i; c <= size; c++) rows[r]![c]! -= factor * rows[i]![c]!;
    }
  }
  const weights = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    let sum = rows[i]![size]!;
    for (let c = i + 1; c < size; c++) sum -= rows[i]![c]! * weights[c]!;
    weights[i] = sum / rows[i]![i]!;
  }
  return weights;
}
