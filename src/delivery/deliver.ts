/** One round of delivery: what fell due is decided, what waits is sent. */
import type { Clock, Store } from "../records/ports.ts";
import type { SteppedClock } from "./clock.ts";
import { type DispatchDeps, dispatch } from "./dispatch.ts";
import { type DueDeps, runDue } from "./due.ts";

export type DeliverDeps = DueDeps & DispatchDeps & { readonly store: Pick<Store, "nextDue">; readonly clock: Clock };

/** @returns how many rows were taken up; a row sent too late goes back to be decided, so rounds follow until nothing moves */
export async function deliver(deps: DeliverDeps): Promise<number> {
  let taken = 0;
  for (;;) {
    const moved = (await runDue(deps, deps.clock.now())) + (await dispatch(deps));
    taken += moved;
    if (moved === 0) return taken;
  }
}

export const nextDelivery = ({ store, outlets }: DeliverDeps): Promise<number | null> =>
  store.nextDue(outlets.map(({ network }) => network));

/** Move a clock that stands still on to `until_ms`, delivering everything at the instant at which it falls due. */
export async function deliverUntil(deps: DeliverDeps & { readonly clock: SteppedClock }, until_ms: number): Promise<void> {
  await deliver(deps);
  for (;;) {
    const next_ms = await nextDelivery(deps);
    if (next_ms === null || next_ms > until_ms) break;
    if (next_ms > deps.clock.now()) deps.clock.to(next_ms);
    if ((await deliver(deps)) === 0) break;
  }
  if (until_ms > deps.clock.now()) deps.clock.to(until_ms);
}
