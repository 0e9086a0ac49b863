/**
 * Sends what waits in the outbox: at least once, and under one key, so that the network drops repeats within its window. What happens
 * outside the window, or too late, stands in kinds.ts.
 */
import type { ClaimedOutgoing, Clock, Store } from "../records/ports.ts";
import { fullJitter } from "./backoff.ts";
import { KINDS } from "./kinds.ts";
import type { Log } from "./log.ts";
import type { Outlet, Reader, Sent, Windows } from "./outlet.ts";
import { readerOf } from "./reader.ts";
import { turns } from "./turns.ts";

export interface DispatchDeps {
  readonly store: Pick<Store, "claimOutgoing" | "markAttempted" | "markSent" | "markFailed" | "decideAgain" | "dropOutgoing">;
  readonly clock: Pick<Clock, "now" | "unsure_until_ms">;
  readonly outlets: readonly Outlet[];
  readonly windows_ms: Windows;
  readonly reader: Reader;
  readonly random: () => number;
  readonly log: Log;
  /** must outlast `send_limit_ms` */
  readonly lease_ms?: number;
  readonly send_limit_ms?: number;
  /** rows claimed at a time; those of one place go one after another, the others at the same time */
  readonly batch?: number;
}

const SEND_LIMIT_MS = 20_000;
/** batches on their way at the same time: one is claimed while another is sent and a third is marked */
const IN_FLIGHT = 3;

/** @returns how many rows were taken up */
export async function dispatch(deps: DispatchDeps): Promise<number> {
  const { store, clock, outlets, lease_ms = 90_000, batch = 50 } = deps;
  const networks = outlets.map(({ network }) => network);
  const inTurn = turns();
  const send = async (rows: readonly ClaimedOutgoing[]): Promise<void> => {
    const places = [...Map.groupBy(rows, ({ place_id }) => place_id)].map(([place_id, list]) =>
      inTurn(place_id, async () => {
        for (const row of list) await sendRow(deps, row);
      }),
    );
    const failed = (await Promise.allSettled(places)).find((one) => one.status === "rejected");
    if (failed) throw failed.reason;
  };
  const flights: Promise<void>[] = [];
  let taken = 0;
  let rows: readonly ClaimedOutgoing[];
  try {
    do {
      if (flights.length === IN_FLIGHT) await flights.shift();
      rows = await store.claimOutgoing(networks, clock.now(), lease_ms, batch);
      const flight = send(rows);
      flight.catch(() => {});
      flights.push(flight);
      taken += rows.length;
    } while (rows.length === batch);
  } finally {
    await Promise.allSettled(flights);
  }
  await Promise.all(flights);
  return taken;
}

async function sendRow(deps: DispatchDeps, row: ClaimedOutgoing): Promise<void> {
  const { clock, outlets } = deps;
  const outlet = outlets.find(({ network }) => network === row.network);
  if (!outlet) return;
  const now_ms = clock.now();
  const kind = KINDS[row.kind];
  const late = now_ms > row.useful_until_ms;
  if (late && row.unknown_since_ms === null) return tooLate(deps, row, now_ms);
  if (!windowOver(deps, row, now_ms) && !(late && kind.spoils)) return attempt(deps, outlet, row);

  const found = await lookUp(deps, outlet, row);
  if (found === "failed") return;
  if (found?.sent) return deps.store.markSent(row, found.native_id, now_ms);
  if (late) return tooLate(deps, row, now_ms);
  if (found) return attempt(deps, outlet, row, { maybe_repeat: false });
  if (kind.unknown === "resend") return attempt(deps, outlet, row, { maybe_repeat: true });
  return drop(deps, row, "it may have arrived, and the network cannot tell");
}

/**
 * Whether a repeat that is sent now may arrive when the network no longer knows the first. An instant in the future counts as over, and so
 * does one written by an earlier life that was ahead of the clock: nothing is known of the time between.
 */
function windowOver(
  { windows_ms, send_limit_ms = SEND_LIMIT_MS, clock }: DispatchDeps,
  { network, unknown_since_ms }: ClaimedOutgoing,
  now_ms: number,
): boolean {
  if (unknown_since_ms === null) return false;
  if (clock.unsure_until_ms !== undefined && unknown_since_ms <= clock.unsure_until_ms) return true;
  const age_ms = now_ms - unknown_since_ms;
  return age_ms < 0 || age_ms + send_limit_ms >= (windows_ms[network] ?? 0);
}

async function attempt(deps: DispatchDeps, outlet: Outlet, row: ClaimedOutgoing, afresh?: { maybe_repeat: boolean }): Promise<void> {
  const { store, clock, reader, send_limit_ms = SEND_LIMIT_MS } = deps;
  const now_ms = clock.now();
  if (!(await store.markAttempted(row, now_ms, afresh))) return;
  const earlier_ms = afresh ? null : row.unknown_since_ms;
  let sent: Sent;
  try {
    sent = await within(send_limit_ms, outlet.send({ ...row, ...afresh }, readerOf(row.facts, reader)));
  } catch (error) {
    return failed(deps, row, String(error), earlier_ms ?? now_ms);
  }
  if (sent.sent) return store.markSent(row, sent.native_id, clock.now());
  if (sent.retry) return failed(deps, row, sent.why, earlier_ms, sent.after_ms);
  return drop(deps, row, sent.why);
}

async function lookUp(deps: DispatchDeps, outlet: Outlet, row: ClaimedOutgoing): Promise<Sent | null | "failed"> {
  if (!outlet.lookUp) return null;
  try {
    return await within(deps.send_limit_ms ?? SEND_LIMIT_MS, outlet.lookUp(row));
  } catch (error) {
    await failed(deps, row, String(error), row.unknown_since_ms);
    return "failed";
  }
}

async function failed(
  { store, clock, random, log }: DispatchDeps,
  row: ClaimedOutgoing,
  why: string,
  unknown_since_ms: number | null,
  after_ms = 0,
): Promise<void> {
  const { key, kind, network } = row;
  const attempts = row.attempts + 1;
  const wait_ms = Math.max(after_ms, fullJitter(attempts, random, KINDS[kind].longest_wait_ms));
  log.warn(
    { key, kind, network, attempts, wait_ms, fate: unknown_since_ms === null ? "not sent" : "unknown", why },
    "sending failed, will try again",
  );
  await store.markFailed(row, clock.now() + wait_ms, why, unknown_since_ms);
}

async function tooLate(deps: DispatchDeps, row: ClaimedOutgoing, now_ms: number): Promise<void> {
  if (KINDS[row.kind].late === "decide-again" && (await deps.store.decideAgain(row, now_ms))) return;
  await drop(deps, row, "too late to be of use");
}

async function drop({ store, log }: DispatchDeps, row: ClaimedOutgoing, why: string): Promise<void> {
  log.warn({ key: row.key, kind: row.kind, network: row.network, why }, "message dropped");
  await store.dropOutgoing(row, why);
}

/** @throws when the promise takes longer; what it does after that, nobody hears */
async function within<T>(limit_ms: number, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no word from the network within ${limit_ms / 1000} s`)), limit_ms);
  });
  try {
    return await Promise.race([work, limit]);
  } finally {
    clearTimeout(timer);
  }
}
