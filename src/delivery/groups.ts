/** Work on rows at the same time where they do not touch each other, in order where they do. */
export async function inGroups<Row>(
  rows: readonly Row[],
  group: (row: Row) => string,
  most: number,
  work: (row: Row) => Promise<void>,
): Promise<void> {
  const waiting = [...Map.groupBy(rows, group).values()];
  async function worker(): Promise<void> {
    for (let next = waiting.shift(); next; next = waiting.shift()) for (const row of next) await work(row);
  }
  const ended = await Promise.allSettled(Array.from({ length: Math.min(most, waiting.length) }, worker));
  const failed = ended.find((one) => one.status === "rejected");
  if (failed) throw failed.reason;
}
