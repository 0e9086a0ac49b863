/** Calls made at the same time become one: what costs a write to the disk costs one for all of them (a group commit). */
export function gather<Item, Result>(work: (items: readonly Item[]) => Promise<readonly Result[]>, most = 200): (item: Item) => Promise<Result> {
  const waiting: { readonly item: Item; readonly settle: PromiseWithResolvers<Result> }[] = [];
  let busy = false;

  async function run(): Promise<void> {
    const group = waiting.splice(0, most);
    try {
      const results = await work(group.map(({ item }) => item));
      for (const [n, { settle }] of group.entries()) settle.resolve(results[n] as Result);
    } catch (error) {
      for (const { settle } of group) settle.reject(error);
    }
    if (waiting.length > 0) setImmediate(run);
    else busy = false;
  }

  return (item) => {
    const settle = Promise.withResolvers<Result>();
    waiting.push({ item, settle });
    // whoever calls before this turn of the event loop ends, or while a group is worked on, comes along
    if (!busy) setImmediate(run);
    busy = true;
    return settle.promise;
  };
}
