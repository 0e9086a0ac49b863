/** Direct messages, and messages that name Gleed: answered where they stand. */
import type { GatewayMessageCreateDispatchData } from "discord.js";
import type { Answer } from "../../src/answer.ts";
import type { Reply } from "../adapter.ts";
import type { DiscordMessage } from "./api.ts";
import type { Shown } from "./exchange.ts";
import { fetchPicture } from "./fetch-picture.ts";
import { isClosed } from "./live.ts";
import type { Memory } from "./memory.ts";
import { type Said, said } from "./parse.ts";
import { persist, reason } from "./requests.ts";
import { type Manner, plainMessage, type Talk, type TalkDeps } from "./talk.ts";
import { escapeMarkdown } from "./escape.ts";

export interface MessageDeps extends TalkDeps {
  readonly talk: Talk;
  readonly memory: Memory;
  readonly me: () => string;
  readonly now: () => number;
  readonly picture_hosts: ReadonlySet<string>;
  readonly count: (what: "answered" | "instead" | "unanswered") => void;
  /** kind of a channel, where it is known */
  readonly channelType: (channel: string) => number | null;
}

/** An answer that takes longer shows that it is being worked out. */
const TYPING_AFTER_MS = 700;
const TAKES_THREADS = new Set([0, 5]);

/** @returns whether the message was meant for Gleed */
export async function onMessage(deps: MessageDeps, event: GatewayMessageCreateDispatchData): Promise<boolean> {
  const heard = said(event, deps.me(), deps.now());
  if (!heard) return false;
  const { talk } = deps;
  if (heard.guild) deps.memory.set(`last:${heard.guild}`, heard.channel);
  const urgent = talk.urgent(heard.message);
  if (urgent) {
    const answered = talk.ask(heard.message, urgent);
    await answer(deps, heard, await talk.compose(urgent, manner(deps, heard)));
    const more = await answered;
    if (more && more !== "failed") await answer(deps, heard, await talk.compose(more, manner(deps, heard)), "/more");
    return true;
  }
  const typing = setTimeout(() => deps.wire.typing(heard.channel).catch(() => {}), TYPING_AFTER_MS);
  const reply = await work(deps, heard);
  clearTimeout(typing);
  await answer(deps, heard, await shown(deps, heard, reply));
  return true;
}

async function work({ talk, picture_hosts }: MessageDeps, { message, picture }: Said): Promise<Reply | null | "failed"> {
  return talk.ask(picture ? { ...message, ...(await fetchPicture(picture, picture_hosts)) } : message, null);
}

async function shown(deps: MessageDeps, heard: Said, reply: Reply | null | "failed"): Promise<Shown> {
  const failed = (): Shown => deps.talk.say("failed", deps.reader.locale, false);
  if (reply === null || reply === "failed") return failed();
  try {
    const made = await deps.talk.compose(reply, manner(deps, heard));
    return heard.guild !== null && isPrivate(reply.answer) ? await directly(deps, heard, made) : made;
  } catch (error) {
    deps.log.error({ why: String(error) }, "an answer could not be laid out");
    return failed();
  }
}

/** A file made for one person is nobody else's, however publicly it was asked for. */
const isPrivate = (answer: Answer): boolean => answer.audience === "person" && answer.blocks.some((block) => block.kind === "document");

async function directly({ wire, talk, reader }: MessageDeps, heard: Said, made: Shown): Promise<Shown> {
  try {
    const channel = await wire.direct(heard.user);
    for (const [at, message] of made.messages.entries()) await persist(() => wire.post(channel, `${heard.id}/direct/${at}`, message));
    return talk.say("sent-direct", reader.locale, false);
  } catch (error) {
    if (!isClosed(error)) throw error;
    return talk.say("direct-closed", reader.locale, false);
  }
}

const manner = (deps: MessageDeps, heard: Said): Manner => ({
  ref: heard.id,
  quiet: false,
  share: false,
  files: true,
  where: {
    channel: heard.channel, guild: heard.guild, user: heard.user, hidden: false, pressed: null,
    threads: heard.guild !== null && TAKES_THREADS.has(deps.channelType(heard.channel) ?? 0),
  },
});

async function answer(deps: MessageDeps, heard: Said, { messages, after }: Shown, more = ""): Promise<void> {
  const { wire, log, talk, reader } = deps;
  const send = async (channel: string, list: readonly DiscordMessage[], answers?: string): Promise<string[]> => {
    const ids: string[] = [];
    for (const [at, message] of list.entries()) ids.push(await persist(() => wire.post(channel, `${heard.id}${more}/${channel}/${at}`, message, at === 0 ? answers : undefined)));
    return ids;
  };
  let ids: string[] = [];
  try {
    ids = await send(heard.channel, messages, heard.id);
    deps.count("answered");
  } catch (error) {
    log.warn({ guild: heard.guild, channel: heard.channel, why: reason(error) }, isClosed(error) ? "I may not write there; whoever manages the server can give View Channel, Send Messages and Embed Links" : "an answer could not be sent");
    try {
      const why = plainMessage(escapeMarkdown(talk.label(reader.locale)("no-right-here")) || "·", false);
      ids = await send(await wire.direct(heard.user), heard.guild && isClosed(error) ? [why, ...messages] : messages);
      deps.count("instead");
      return;
    } catch (again) {
      deps.count("unanswered");
      log.error({ guild: heard.guild, channel: heard.channel, why: reason(again) }, "an answer reached nobody");
      return;
    }
  }
  await after?.(ids);
}
