/** Work of the same name one after another, in the order in which it came; work of different names side by side. */
export type Turns = <T>(name: string, work: () => Promise<T>) => Promise<T>;

export function turns(): Turns {
  const last = new Map<string, Promise<unknown>>();
  return async (name, work) => {
    const before = last.get(name);
    const mine = before ? before.then(work, work) : work();
    last.set(name, mine);
    try {
      return await mine;
    } finally {
      if (last.get(name) === mine) last.delete(name);
    }
  };
}
