/** What is delivered in these tests: rows of every kind, decided by a small stand-in, and the judgement over what arrived. */
import type { DecideDue } from "../../../src/delivery/due.ts";
import type { Message } from "../../../src/message.ts";
import type { Outgoing, Store } from "../../../src/records/ports.ts";
import type { Due, DueKind } from "../../../src/records/types.ts";
import { causeOf, decided, HOUR, MINUTE, message, saying } from "../../store/made.ts";
import type { Random } from "../random.ts";
import { NETWORKS, type Shown, WINDOW_MS } from "./network.ts";

const KINDS = ["guide-check-in", "reminder", "upkeep", "digest"] as const satisfies readonly DueKind[];
/** guide check-ins go stale within the window, the others outlast every pause of these tests */
const usefulFor = (kind: DueKind): number => (kind === "guide-check-in" ? WINDOW_MS / 2 : 1000 * HOUR);

/** Words of a row: its cause, and what a late check-in asks instead. */
export const decideDue: DecideDue = (_snapshot, row, now_ms) =>
  decided({ answer: saying(`${row.key} ${now_ms > row.useful_until_ms ? "what do you see now?" : "on time"}`) });
export const wordsOf = ({ answer }: Pick<Outgoing, "answer">): string => String(answer.headline.args?.words);

export async function plant(store: Store, name: string, count: number, random: Random, now_ms: number): Promise<Due[]> {
  const network = random.of(NETWORKS);
  const said = (person: string) => {
    const place = { network, id: `${person}'s own`, kind: "private", encrypted: null } as const;
    return message(person, `plants ${name}`, { place });
  };
  const enter = ({ identity, place }: Message) => store.enter(identity, place, now_ms);
  const one = said(`person ${random.from(1, 2)}`);
  const ids = await enter(one);
  const owners = [ids, await enter(said(`person ${random.from(3, 4)}`))] as const;
  const snapshot = await store.load(ids.person_id, ids.place_id, now_ms);
  const due = Array.from({ length: count }, (_, n): Due => {
    const kind = random.of(KINDS);
    return {
      key: `${kind}/${name}.${n}/${network}`,
      kind,
      due_at_ms: now_ms,
      useful_until_ms: now_ms + usefulFor(kind),
      ...random.of(owners),
      payload: {},
    };
  });
  const commit = await store.commit(causeOf(one), snapshot, decided({ due }), now_ms);
  if (commit.outcome !== "committed") throw new Error(`could not plant: ${JSON.stringify(commit)}`);
  return due;
}

export interface Verdict {
  readonly rows: number;
  readonly shown: number;
  readonly lost: readonly string[];
  readonly double: readonly string[];
  /** shown again after the window, and marked so */
  readonly repeats: number;
  readonly stale: readonly string[];
}

/** No kind is ever left because nobody can tell whether it arrived. */
export function judge(planted: readonly Due[], shown: readonly Shown[]): Verdict {
  const lost: string[] = [];
  const double: string[] = [];
  const stale: string[] = [];
  let repeats = 0;
  const byCause = Map.groupBy(shown, ({ words }) => words.split(" ")[0] ?? "");
  for (const { key, kind, useful_until_ms } of planted) {
    const seen = byCause.get(key) ?? [];
    if (seen.length === 0) lost.push(key);
    for (const [at, one] of seen.entries()) {
      if (kind === "guide-check-in" && one.words.endsWith("on time") && one.at_ms > useful_until_ms) stale.push(key);
      const earlier = seen.slice(0, at).find(({ words }) => words === one.words);
      if (!earlier || askedAnew(kind, earlier.key, one.key)) continue;
      const allowed = one.maybe_repeat && one.at_ms - earlier.at_ms >= WINDOW_MS && key.endsWith("forgetful");
      if (allowed) repeats++;
      else double.push(`${key}: ${JSON.stringify([earlier, one])}`);
    }
  }
  return { rows: planted.length, shown: shown.length, lost, double, repeats, stale };
}

/** A check-in that grew stale before it was known to have arrived is asked anew: another question, with a key of its own. */
function askedAnew(kind: DueKind, earlier: string, later: string): boolean {
  const instant = (key: string): number => Number(key.split("@")[1]);
  return kind === "guide-check-in" && instant(later) > instant(earlier) + usefulFor(kind);
}

/** A pause between two lives: mostly within the window, sometimes beyond it. */
export const pause = (random: Random): number => (random.chance(0.3) ? random.from(WINDOW_MS, 10 * MINUTE) : random.from(1, WINDOW_MS / 4));
