/** One life of the process that delivers. It ends at a chosen step: before or after one of the calls by which anything is changed. */
import type { Store } from "../../../src/records/ports.ts";
import type { Outlet } from "../../../src/delivery/outlet.ts";

const STEPS = [
  "claimDue",
  "commit",
  "commitMany",
  "dropDue",
  "postponeDue",
  "claimOutgoing",
  "markAttempted",
  "markSent",
  "markFailed",
  "decideAgain",
  "dropOutgoing",
] as const;

/** Every place between two steps at which a life may end. */
export const BOUNDARIES = [
  "claimDue",
  "commit",
  "commitMany",
  "claimOutgoing",
  "markAttempted",
  "send",
  "lookUp",
  "markSent",
  "markFailed",
  "decideAgain",
].flatMap((name) => [`before ${name}`, `after ${name}`]) as [string, ...string[]];

/** @param step called before and after each call; does not come back, or throws, when the life ends there */
export function mortalStore(store: Store, step: (name: string) => void): Store {
  const mortal: Record<string, unknown> = { ...store };
  for (const name of STEPS) mortal[name] = mortalCall(name, store[name] as (...args: unknown[]) => Promise<unknown>, step);
  return mortal as unknown as Store;
}

export function mortalOutlet(outlet: Outlet, step: (name: string) => void): Outlet {
  return {
    network: outlet.network,
    send: mortalCall("send", outlet.send.bind(outlet), step),
    ...(outlet.lookUp ? { lookUp: mortalCall("lookUp", outlet.lookUp.bind(outlet), step) } : {}),
  };
}

function mortalCall<Args extends unknown[], Result>(name: string, call: (...args: Args) => Promise<Result>, step: (name: string) => void) {
  return async (...args: Args): Promise<Result> => {
    step(`before ${name}`);
    const result = await call(...args);
    step(`after ${name}`);
    return result;
  };
}
