import { BUCKETS, GROUP_WEIGHTS, type Reading } from "./features.ts";

/** The features the linear model knows: their buckets, and how telling each is by its rarity in training. */
export interface Known {
  readonly buckets: Int32Array;
  readonly rarity: Float32Array;
}

/** Known features of one message: rows of the linear model and their values. Good until the next call. */
export interface Weighed {
  readonly rows: Int32Array;
  readonly values: Float32Array;
  count: number;
}

const WEIGHTS = Object.values(GROUP_WEIGHTS);

/** Inverse document frequency, each kind of feature scaled to its weight; a feature counts once however often it comes. */
export function buildWeigher({ buckets, rarity }: Known): (reading: Reading) => Weighed {
  const rowOf = new Int32Array(BUCKETS).fill(-1);
  buckets.forEach((bucket, row) => { rowOf[bucket] = row; });
  const lastSeen = new Uint32Array(buckets.length);
  let call = 0;
  let weighed: Weighed = { rows: new Int32Array(1024), values: new Float32Array(1024), count: 0 };
  return ({ features, ends }) => {
    call++;
    if (features.length > weighed.rows.length) {
      weighed = { rows: new Int32Array(2 * features.length), values: new Float32Array(2 * features.length), count: 0 };
    }
    const { rows, values } = weighed;
    let count = 0;
    let at = 0;
    for (let group = 0; group < ends.length; group++) {
      const from = count;
      let squares = 0;
      for (const end = ends[group] as number; at < end; at++) {
        const row = rowOf[features[at] as number] as number;
        if (row < 0 || lastSeen[row] === call) continue;
        lastSeen[row] = call;
        const value = rarity[row] as number;
        squares += value * value;
        rows[count] = row;
        values[count++] = value;
      }
      const scale = squares > 0 ? (WEIGHTS[group] as number) / Math.sqrt(squares) : 0;
      for (let i = from; i < count; i++) values[i] = (values[i] as number) * scale;
    }
    weighed.count = count;
    return weighed;
  };
}
