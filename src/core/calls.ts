/** Calls between two threads, both ways: a name and plain data go over, a promise comes back. */
interface Port {
  postMessage(value: unknown): void;
  on(event: "message", listener: (wire: Wire) => void): unknown;
}

export type Handlers = Readonly<Record<string, (...args: never[]) => unknown>>;
export type Call = (name: string, ...args: unknown[]) => Promise<unknown>;

type Wire =
  | { readonly ask: number; readonly name: string; readonly args: readonly unknown[] }
  | { readonly answer: number; readonly value?: unknown; readonly error?: { readonly name: string; readonly message: string } };

export class FarError extends Error {}

export function calls(port: Port, handlers: Handlers): Call {
  const waiting = new Map<number, PromiseWithResolvers<unknown>>();
  let last = 0;
  port.on("message", (wire: Wire) => {
    if ("answer" in wire) {
      const open = waiting.get(wire.answer);
      waiting.delete(wire.answer);
      if (wire.error) open?.reject(Object.assign(new FarError(wire.error.message), { name: wire.error.name }));
      else open?.resolve(wire.value);
      return;
    }
    const handle = handlers[wire.name] as ((...args: unknown[]) => unknown) | undefined;
    Promise.resolve()
      .then(() => {
        if (!handle) throw new Error(`nothing answers to "${wire.name}"`);
        return handle(...wire.args);
      })
      .then(
        (value) => port.postMessage({ answer: wire.ask, value } satisfies Wire),
        (error: unknown) => port.postMessage({ answer: wire.ask, error: { name: error instanceof Error ? error.name : "Error", message: error instanceof Error ? error.message : String(error) } } satisfies Wire),
      );
  });
  return (name, ...args) => {
    const id = ++last;
    const open = Promise.withResolvers<unknown>();
    waiting.set(id, open);
    port.postMessage({ ask: id, name, args } satisfies Wire);
    return open.promise;
  };
}
