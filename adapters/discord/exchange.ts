/**
 * One interaction from its arrival to its answer. The platform waits 3 s for a sign of life and keeps the token for 15 minutes: an answer
 * that is ready at once goes at once, else the sign goes first; what comes after the token has run out goes as a new message.
 */
import type { DiscordMessage } from "./api.ts";
import { type Failure, failureOf, persist, reason } from "./requests.ts";
import type { Wire } from "./wire.ts";

export interface Shown {
  readonly messages: readonly [DiscordMessage, ...DiscordMessage[]];
  readonly as: "reply" | "update";
  /** told the ids of the messages as they came to stand; null where nobody asked the platform */
  readonly after?: (ids: readonly (string | null)[]) => Promise<void>;
}

export interface ExchangeDeps {
  readonly wire: Wire;
  readonly monotonic: () => number;
  readonly ready_ms: number;
  readonly token_ms: number;
  /** Another way to the same reader. */
  instead(messages: readonly DiscordMessage[]): Promise<void>;
  count(what: Count): void;
  failed(what: string, why: string, failure: Failure): void;
}
export type Count = "acknowledged" | "answered" | "deferred" | "too-late" | "unacknowledged" | "instead" | "unanswered";

export const READY_MS = 300;
export const TOKEN_MS = 14.5 * 60_000;
/** Acknowledgements are tried no longer than this after the interaction came. */
const GIVE_UP_MS = 2_400;
const PAUSE_MS = 60;

export interface Incoming {
  readonly id: string;
  readonly token: string;
}

/** @param work never rejects: its own failures are shown as answers */
export async function exchange(deps: ExchangeDeps, { id, token }: Incoming, how: "reply" | "private-reply" | "update", work: Promise<Shown>): Promise<void> {
  const { wire, monotonic } = deps;
  const from = monotonic();
  const ready = await Promise.race([work, sleep(deps.ready_ms).then(() => null)]);
  const [head] = ready?.messages ?? [];

  // files take their time: the sign of life does not wait for them
  if (ready && head && head.files.length === 0) {
    let first: string | null = null;
    const known = await acknowledge(deps, from, async () => {
      if (ready.as === "update") await wire.update(id, token, head);
      else first = await wire.reply(id, token, head, ready.after !== undefined);
    });
    if (known === "no") return instead(deps, ready, ready.messages, []);
    if (known === "yes" && (first !== null || ready.after === undefined || ready.as === "update")) {
      deps.count("answered");
      return rest(deps, token, ready, [first], from);
    }
    // it may stand there already, or stands there under an id that was lost on the way: the same once more changes nothing
    return edit(deps, token, ready, from, "reply");
  }

  const deferred = how === "update" && ready?.as === "reply" ? "reply" : how;
  const known = await acknowledge(deps, from, () => wire.defer(id, token, deferred));
  if (known === "yes") deps.count("deferred");
  const shown = await work;
  if (known === "no") return instead(deps, shown, shown.messages, []);
  await edit(deps, token, shown, from, deferred);
}

async function edit(deps: ExchangeDeps, token: string, shown: Shown, from: number, deferred: "reply" | "private-reply" | "update"): Promise<void> {
  const { wire, monotonic } = deps;
  const [first] = shown.messages;
  let made: string;
  try {
    if (monotonic() - from > deps.token_ms) throw new TokenEnded();
    made = await persist(() => (deferred === "update" && shown.as === "reply" ? wire.followUp(token, first) : wire.editReply(token, first)));
  } catch (error) {
    if (!(error instanceof TokenEnded)) deps.failed("an answer", reason(error), failureOf(error));
    return instead(deps, shown, shown.messages, []);
  }
  deps.count("answered");
  await rest(deps, token, shown, [made], from);
}

class TokenEnded extends Error {}

/** @returns whether the platform knows that we are there; `unknown` when tries may have arrived and no answer came back */
export async function acknowledge(deps: Pick<ExchangeDeps, "monotonic" | "count" | "failed">, from: number, send: () => Promise<void>): Promise<"yes" | "no" | "unknown"> {
  for (let tries = 1; ; tries++) {
    try {
      await send();
      deps.count("acknowledged");
      return "yes";
    } catch (error) {
      const failure = failureOf(error);
      // a try whose answer was lost on the way had arrived
      if (failure === "already") {
        deps.count("acknowledged");
        return "yes";
      }
      const late = deps.monotonic() - from > GIVE_UP_MS;
      if (failure === "passing" && !late) {
        await sleep(PAUSE_MS * tries);
        continue;
      }
      deps.count(failure === "too-late" || late ? "too-late" : "unacknowledged");
      deps.failed("an acknowledgement", reason(error), failure);
      return failure === "passing" ? "unknown" : "no";
    }
  }
}

/** The further messages of an answer, then what was to be done once it stands. */
async function rest(deps: ExchangeDeps, token: string, shown: Shown, ids: (string | null)[], from: number): Promise<void> {
  const [, ...others] = shown.messages;
  for (const [at, message] of others.entries()) {
    try {
      if (deps.monotonic() - from > deps.token_ms) throw new TokenEnded();
      ids.push(await persist(() => deps.wire.followUp(token, message)));
    } catch (error) {
      if (!(error instanceof TokenEnded)) deps.failed("a further message of an answer", reason(error), failureOf(error));
      await instead(deps, null, others.slice(at), ids);
      break;
    }
  }
  await shown.after?.(ids);
}

async function instead(deps: ExchangeDeps, shown: Shown | null, messages: readonly DiscordMessage[], ids: (string | null)[]): Promise<void> {
  try {
    await deps.instead(messages);
    deps.count("instead");
  } catch (error) {
    deps.count("unanswered");
    deps.failed("an answer by another way", reason(error), failureOf(error));
  }
  await shown?.after?.(ids);
}

const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
