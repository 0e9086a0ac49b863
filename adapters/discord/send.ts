/** What fell due: to the person directly, to the card of a live answer, to the channel the group agreed on. */
import type { Outgoing } from "../../src/records/ports.ts";
import type { Reader } from "../../src/text/render.ts";
import type { Sent } from "../adapter.ts";
import { labels } from "../outline.ts";
import type { DiscordMessage } from "./api.ts";
import { escapeMarkdown } from "./escape.ts";
import { type Cards, isClosed } from "./live.ts";
import type { Memory } from "./memory.ts";
import { userOfPlace } from "./parse.ts";
import { renderDiscord } from "./render.ts";
import { sentOf } from "./requests.ts";
import { plainMessage, some, type Talk, type TalkDeps } from "./talk.ts";
import type { Wire } from "./wire.ts";

export interface SendDeps extends Pick<TalkDeps, "render" | "log"> {
  readonly talk: Talk;
  readonly wire: Wire;
  readonly cards: Cards;
  readonly memory: Memory;
}

/** A button's reference is at most 80 plain characters; choices of due answers say by themselves what they are. */
const refOf = (key: string): string => key.replace(/[^\w-]/g, "_").slice(0, 80) || "due";

export async function send(deps: SendDeps, outgoing: Outgoing, reader: Reader): Promise<Sent> {
  const { render, cards, log, talk } = deps;
  const { key, network_place_id, maybe_repeat } = outgoing;
  const answer = await talk.drawn(outgoing.answer, reader, true);
  const messages = some(renderDiscord(answer, { render, reader, ref: refOf(key), maybe_repeat }));
  let refused: Sent = { sent: false, retry: false, why: "nowhere to send it" };

  for (const way of ways(deps, outgoing)) {
    try {
      const channel = await way.channel();
      if (channel === null) continue;
      const list = way.forSomeone ? [forSomeone(deps, way.forSomeone, reader), ...messages] : messages;
      // a try whose end is unknown is tried again under the same nonce, in the same place
      const ids = answer.live && !answer.emergency
        ? await cards.post(answer.live, channel, key, list, userOfPlace(network_place_id))
        : await post(deps.wire, channel, key, list);
      return { sent: true, native_id: ids[0] ?? null };
    } catch (error) {
      refused = sentOf(error);
      if (!isClosed(error)) return refused;
      log.warn({ key, place: network_place_id, ...(refused.sent ? {} : { why: refused.why }) }, `${way.name} is closed to me; trying another way`);
    }
  }
  return refused;
}

interface Way {
  readonly name: string;
  readonly channel: () => Promise<string | null>;
  readonly forSomeone?: string;
}

function* ways({ wire, cards, memory }: SendDeps, { answer, network_place_id: place }: Outgoing): Generator<Way> {
  const card = answer.live ? cards.find(answer.live) : null;
  const user = userOfPlace(place) ?? card?.user ?? null;
  const guild = userOfPlace(place) === null ? place : user ? memory.get<string>(`guild-of:${user}`) : null;
  const agreed = guild ? memory.get<string>(`notices:${guild}`) : null;
  const forSomeone = user && userOfPlace(place) !== null ? { forSomeone: user } : {};
  if (card) yield { name: "the channel of the live answer", channel: async () => card.channel, ...(card.channel === agreed ? forSomeone : {}) };
  if (userOfPlace(place) === null) {
    yield { name: "the agreed channel", channel: async () => agreed };
    yield { name: "the channel last used", channel: async () => memory.get<string>(`last:${place}`) };
  }
  if (user) yield { name: "the direct message", channel: () => wire.direct(user) };
  if (userOfPlace(place) !== null) yield { name: "the agreed channel", channel: async () => agreed, ...forSomeone };
}

async function post(wire: Wire, channel: string, key: string, messages: readonly DiscordMessage[]): Promise<string[]> {
  const ids: string[] = [];
  for (const [at, message] of messages.entries()) ids.push(await wire.post(channel, `${key}/${at}`, message));
  return ids;
}

/** Named so that the others know whom it is for; nobody is called. */
function forSomeone({ render }: SendDeps, user: string, reader: Reader): DiscordMessage {
  return plainMessage(`<@${user}> ${escapeMarkdown(labels({ render, reader })("for-someone"))}`.trim(), false);
}
