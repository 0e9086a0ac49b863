/** From a message to what is shown for it, wherever it came from: danger first and at once, live answers on their cards. */
import type { Answer } from "../../src/answer.ts";
import type { Log } from "../../src/delivery/log.ts";
import type { Message } from "../../src/message.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import type { Core, Reply } from "../adapter.ts";
import { type Drawn, withFiles, withoutFiles } from "../drawn.ts";
import { type Label, labels } from "../outline.ts";
import { oneLine, shorten } from "../plain.ts";
import { type DiscordMessage, EPHEMERAL, IS_COMPONENTS_V2 } from "./api.ts";
import { escapeMarkdown } from "./escape.ts";
import type { Shown } from "./exchange.ts";
import { type Cards, isClosed, type Where } from "./live.ts";
import { renderDiscord, type DiscordOptions } from "./render.ts";
import { failureOf, reason } from "./requests.ts";
import type { Wire } from "./wire.ts";

export interface TalkDeps {
  readonly core: Core;
  readonly wire: Wire;
  readonly cards: Cards;
  readonly render: Renderer;
  /** how Gleed's own few words are shown to somebody of whom nothing is known */
  readonly reader: Reader;
  readonly log: Log;
  readonly draw?: Drawn;
}

export interface Manner {
  readonly where: Where;
  /** names the message that is answered: what its buttons refer to */
  readonly ref: string;
  /** shown to nobody else unless it is the group's business */
  readonly quiet: boolean;
  /** may be shown to the channel by a press */
  readonly share: boolean;
  readonly files: boolean;
}

export interface Talk {
  /** What stands in the text may be an emergency: its answer, from this process alone. */
  urgent(message: Message): Reply | null;
  /** Work a message through; never rejects. `null`: the answer was given already. */
  ask(message: Message, urgent: Reply | null): Promise<Reply | null | "failed">;
  compose(reply: Reply, manner: Manner): Promise<Shown>;
  /** the same answer with its pictures drawn; their words alone where files may not be sent */
  drawn(answer: Answer, reader: Reader, files: boolean): Promise<Answer>;
  /** one of the adapter's own sentences */
  say(id: string, locale: string, quiet: boolean, args?: Record<string, string>): Shown;
  label(locale: string): Label;
}

export function talk(deps: TalkDeps): Talk {
  const { core, wire, cards, render, log } = deps;
  const label = (locale: string): Label => labels({ render, reader: { ...deps.reader, locale } });

  const drawn = async (answer: Answer, reader: Reader, files: boolean): Promise<Answer> =>
    files ? withFiles(answer, reader, deps.draw, (error) => log.warn({ why: reason(error) }, "a picture could not be drawn; its words stand for it")) : withoutFiles(answer);

  function note(label: Label, id: string): DiscordMessage {
    return plainMessage(escapeMarkdown(label(id)), true);
  }

  async function onCard(reply: Reply, live: string, manner: Manner, pages: (more?: Partial<DiscordOptions>) => DiscordMessage[]): Promise<Shown> {
    const { where, ref } = manner;
    const words = labels({ render, reader: reply.reader });
    const user = where.user;
    const plan = cards.plan(live, where);
    const here = (messages: DiscordMessage[], channel = where.channel): Shown => ({
      messages: some(messages), as: "reply",
      after: (ids) => (channel === null || ids.length === 0 ? Promise.resolve() : cards.settle(live, { channel, ids: ids.flatMap((id) => id ?? []), user })),
    });
    const pointer = (content: string, quiet: boolean): [DiscordMessage] => [plainMessage(content, quiet)];

    switch (plan.plan) {
      case "update":
        return { messages: some(pages()), as: "update", after: (ids) => cards.settle(live, { channel: plan.card.channel, ids: [where.pressed, ...ids.slice(1)].flatMap((id) => id ?? []), user }) };
      case "here":
        return here([...pages(), ...(plan.lacks_right ? [plainMessage(escapeMarkdown(words("no-thread-right")), false)] : [])]);
      case "there":
        try {
          await cards.post(live, plan.card.channel, ref, pages(), user);
          return { messages: pointer(`${escapeMarkdown(words("live-there"))} <#${plan.card.channel}>`, manner.quiet), as: "reply" };
        } catch (error) {
          log.warn({ why: reason(error) }, "the thread of a live answer is closed");
          return here(pages());
        }
      case "direct":
        try {
          await cards.post(live, await wire.direct(user), ref, pages(), user);
          return { messages: pointer(escapeMarkdown(words("live-direct")), true), as: "reply" };
        } catch (error) {
          if (!isClosed(error)) log.warn({ why: reason(error) }, "a direct message could not be sent");
          return { messages: some([...pages({ ephemeral: true }), note(words, "direct-closed")]), as: "reply" };
        }
      case "thread":
        return {
          messages: pointer(escapeMarkdown(words("live-thread")), false), as: "reply",
          after: ([starter]) => ownThread(live, where, ref, starter ?? null, shorten(oneLine(render(reply.answer.headline, reply.reader)), 100), pages),
        };
    }
  }

  /** Its own thread; where the server does not let us, the channel itself; where that is closed, the person's direct messages. */
  async function ownThread(live: string, where: Where, ref: string, starter: string | null, name: string, pages: () => DiscordMessage[]): Promise<void> {
    const channel = where.channel ?? "";
    const tries = [
      async () => wire.thread(channel, starter ?? (await wire.post(channel, `${ref}/starter`, plainMessage("·", false))), name || "·"),
      async () => channel,
      async () => wire.direct(where.user),
    ];
    for (const [at, place] of tries.entries()) {
      try {
        await cards.post(live, await place(), `${ref}/card/${at}`, pages(), where.user);
        return;
      } catch (error) {
        log.warn({ guild: where.guild, channel, why: reason(error), failure: failureOf(error) }, "a live answer found no place here; whoever manages the server can give Create Public Threads and Send Messages in Threads");
      }
    }
  }

  return {
    label,
    drawn,
    urgent: (message) => core.emergency(message),
    async ask(message, urgent) {
      try {
        const reply = await core.receive(urgent ? { ...message, emergency_answered: urgent.answer.topic } : message);
        return urgent && reply.answer.emergency && reply.answer.topic === urgent.answer.topic ? null : reply;
      } catch (error) {
        log.error({ why: reason(error), native_id: message.native_id }, "a message could not be answered");
        return "failed";
      }
    },
    async compose(reply, manner) {
      const { where } = manner;
      const answer = await drawn(reply.answer, reply.reader, manner.files);
      const open = !where.hidden && (answer.emergency || answer.audience === "place" || answer.live !== undefined);
      const ephemeral = manner.quiet && !open;
      const pages = (more: Partial<DiscordOptions> = {}): DiscordMessage[] =>
        renderDiscord(answer, { render, reader: reply.reader, ref: manner.ref, ephemeral, share: manner.share && ephemeral, ...more });
      return answer.live === undefined || answer.emergency ? { messages: some(pages()), as: "reply" } : onCard(reply, answer.live, manner, pages);
    },
    say: (id, locale, quiet, args) => ({ messages: [plainMessage(escapeMarkdown(label(locale)(id, args)) || "·", quiet)], as: "reply" }),
  };
}

export const plainMessage = (content: string, quiet: boolean): DiscordMessage => ({
  payload: { flags: IS_COMPONENTS_V2 | (quiet ? EPHEMERAL : 0), components: [{ type: 10, content }], allowed_mentions: { parse: [] } },
  files: [],
});

export const some = (messages: readonly DiscordMessage[]): [DiscordMessage, ...DiscordMessage[]] => [messages[0] ?? plainMessage("·", false), ...messages.slice(1)];

/** Without what only its own reader can press. */
export const withoutChoices = (answer: Answer): Answer =>
  ({ ...answer, blocks: answer.blocks.filter((block) => block.kind !== "choices" && block.kind !== "form" && block.kind !== "question") }) as Answer;
