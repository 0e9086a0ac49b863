/** The months by their English names and the usual three letters. */
export const MONTHS: ReadonlyMap<string, number> = new Map([
  ..."january february march april may june july august september october november december".split(" ")
    .flatMap((name, n): [string, number][] => [[name, n + 1], [name.slice(0, 3), n + 1]]),
  ["sept", 9],
]);
