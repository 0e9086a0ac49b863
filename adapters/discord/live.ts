/** Live answers: one card each, changed where it stands when pressed, moved to the end of its channel when it has something to ask. */
import type { DiscordMessage } from "./api.ts";
import type { Memory } from "./memory.ts";
import { failureOf } from "./requests.ts";
import type { Wire } from "./wire.ts";

export interface Card {
  readonly channel: string;
  readonly ids: readonly string[];
  /** who began it: reached directly when the channel is closed to us */
  readonly user: string | null;
}

/** Where somebody asks, and what may be done there. */
export interface Where {
  readonly channel: string | null;
  readonly guild: string | null;
  readonly user: string;
  /** in a place with others, and yet seen by nobody else */
  readonly hidden: boolean;
  readonly threads: boolean;
  /** id of the message whose button was pressed */
  readonly pressed: string | null;
}

export type Plan =
  /** change the card that was pressed */
  | { readonly plan: "update"; readonly card: Card }
  /** the answer itself is the card */
  | { readonly plan: "here"; readonly lacks_right: boolean }
  /** the answer points to a thread that holds the card */
  | { readonly plan: "thread" }
  /** the answer points to where the card stands already */
  | { readonly plan: "there"; readonly card: Card }
  /** the answer points to the person's direct messages */
  | { readonly plan: "direct" };

export interface Cards {
  plan(live: string, where: Where): Plan;
  /** whether this message is a card: then a press is likely to change it */
  isCard(message: string | null): boolean;
  find(live: string): Card | null;
  /** These messages are the card now; what stood elsewhere goes. */
  settle(live: string, card: Card): Promise<void>;
  /** Post the card anew. */
  post(live: string, channel: string, key: string, messages: readonly DiscordMessage[], user: string | null): Promise<string[]>;
}

export function cards(memory: Memory, wire: Wire): Cards {
  const find = (live: string): Card | null => memory.get<Card>(`live:${live}`);

  async function settle(live: string, card: Card): Promise<void> {
    const before = find(live);
    memory.set(`live:${live}`, { ...card, user: card.user ?? before?.user ?? null });
    for (const id of card.ids) memory.set(`live:card:${id}`, live);
    for (const id of before?.ids ?? []) {
      if (card.ids.includes(id)) continue;
      memory.forget(`live:card:${id}`);
      await wire.remove(before?.channel ?? card.channel, id).catch(() => {});
    }
  }

  return {
    find,
    settle,
    isCard: (message) => message !== null && memory.get(`live:card:${message}`) !== null,
    plan(live, where) {
      const card = find(live);
      if (card && where.pressed !== null && card.ids.includes(where.pressed)) return { plan: "update", card };
      if (where.hidden) return { plan: "direct" };
      if (where.guild === null || card?.channel === where.channel) return { plan: "here", lacks_right: false };
      if (card) return { plan: "there", card };
      return where.threads ? { plan: "thread" } : { plan: "here", lacks_right: true };
    },
    async post(live, channel, key, messages, user) {
      const ids: string[] = [];
      for (const [at, message] of messages.entries()) ids.push(await wire.post(channel, `${key}/${at}`, message));
      await settle(live, { channel, ids, user });
      return ids;
    },
  };
}

/** Whether there is no use in trying this channel again. */
export const isClosed = (error: unknown): boolean => ["forbidden", "gone", "closed"].includes(failureOf(error));
