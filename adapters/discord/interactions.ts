/** What is typed after a slash, pressed, picked, filled in or looked up: read, asked of the core, answered once and in time. */
import type { APIApplicationCommandInteraction, APIInteraction, APIMessageComponentInteraction, APIModalSubmitInteraction } from "discord.js";
import type { Message } from "../../src/message.ts";
import type { Reply } from "../adapter.ts";
import { labels, outline } from "../outline.ts";
import { type Commands, givenBy, toldBy } from "./commands.ts";
import { readCustomId, readOption } from "./custom-id.ts";
import { acknowledge, exchange, type ExchangeDeps, type Shown } from "./exchange.ts";
import { fetchPicture } from "./fetch-picture.ts";
import { type Cards, isClosed } from "./live.ts";
import type { Memory } from "./memory.ts";
import { formPage, readModal, renderModal } from "./modal.ts";
import { type Asked, asked, filledIn, mayAttach, messageOf, pictureOf, wordsOf } from "./parse.ts";
import { renderDiscord } from "./render.ts";
import { persist } from "./requests.ts";
import type { Suggestions } from "./suggest.ts";
import { type Manner, some, type Talk, type TalkDeps, withoutChoices } from "./talk.ts";

export interface InteractionDeps extends TalkDeps {
  readonly talk: Talk;
  readonly cards: Cards;
  readonly memory: Memory;
  readonly commands: Commands;
  readonly suggestions: Suggestions;
  readonly exchange: (from: Asked) => ExchangeDeps;
  readonly me: () => string;
  readonly now: () => number;
  /** pictures are fetched from these hosts only */
  readonly picture_hosts: ReadonlySet<string>;
}

const MODAL_CAP_MS = 2_000;
const CREATE_PUBLIC_THREADS = 1n << 35n;
const SEND_IN_THREADS = 1n << 38n;
const ADMINISTRATOR = 1n << 3n;
const TAKES_THREADS = new Set([0, 5]);

export async function onInteraction(deps: InteractionDeps, interaction: APIInteraction): Promise<void> {
  const from = asked(interaction);
  if (!from) return;
  switch (interaction.type) {
    case 2:
      return onCommand(deps, from, interaction);
    case 3:
      return onPress(deps, from, interaction);
    case 4:
      return onTyping(deps, from, interaction);
    case 5:
      return onModal(deps, from, interaction);
    default:
      return;
  }
}

function manner(from: Asked, hidden: boolean, quiet: boolean): Manner {
  const { interaction, guild, may } = from;
  const can = (bit: bigint): boolean => (may & bit) === bit || (may & ADMINISTRATOR) !== 0n;
  const inServer = interaction.guild_id !== undefined;
  return {
    ref: interaction.id,
    quiet: quiet && inServer,
    share: quiet && guild !== null,
    files: mayAttach(from),
    where: {
      channel: from.channel, guild, user: from.user, hidden: hidden && (inServer || interaction.context === 2),
      threads: guild !== null && TAKES_THREADS.has(interaction.channel?.type ?? -1) && can(CREATE_PUBLIC_THREADS) && can(SEND_IN_THREADS),
      pressed: "message" in interaction ? (interaction.message?.id ?? null) : null,
    },
  };
}

/** Ask the core and show; danger is answered before anything is waited for. */
async function converse(deps: InteractionDeps, from: Asked, message: Message, how: Manner, defer: "reply" | "private-reply" | "update"): Promise<void> {
  const { talk, suggestions } = deps;
  const urgent = talk.urgent(message.form ? { ...message, text: Object.values(message.form.values).join("\n") } : message);
  const answered = talk.ask(message, urgent);
  suggestions.forget(from.user);
  if (urgent) {
    await exchange(deps.exchange(from), from.interaction, defer, talk.compose(urgent, how));
    const more = await answered;
    if (more && more !== "failed") await followUp(deps, from, await talk.compose(more, how));
    return;
  }
  await exchange(deps.exchange(from), from.interaction, defer, shown(deps, from, answered, how));
}

async function shown({ talk, log }: InteractionDeps, from: Asked, answered: Promise<Reply | null | "failed">, how: Manner): Promise<Shown> {
  const reply = await answered;
  try {
    return reply === null || reply === "failed" ? talk.say("failed", from.locale, how.quiet) : await talk.compose(reply, how);
  } catch (error) {
    log.error({ why: String(error) }, "an answer could not be laid out");
    return talk.say("failed", from.locale, how.quiet);
  }
}

async function followUp(deps: InteractionDeps, from: Asked, { messages, after }: Shown): Promise<void> {
  const ids: string[] = [];
  try {
    for (const message of messages) ids.push(await persist(() => deps.wire.followUp(from.interaction.token, message)));
  } catch {
    await deps.exchange(from).instead(messages.slice(ids.length)).catch(() => deps.exchange(from).count("unanswered"));
  }
  await after?.(ids);
}

async function onCommand(deps: InteractionDeps, from: Asked, interaction: APIApplicationCommandInteraction): Promise<void> {
  const { commands, talk } = deps;
  const { data } = interaction;
  const onMessage = data.type === 3;
  const command = onMessage ? commands.message.find(({ name }) => name.en === data.name) : commands.slash.find(({ name }) => name.en === data.name);
  const sayNow = (id: string): Promise<void> => exchange(deps.exchange(from), interaction, "private-reply", Promise.resolve(talk.say(id, from.locale, interaction.guild_id !== undefined)));
  if (!command) return sayNow("expired");
  if (command.moderators && !from.moderates) return sayNow("moderators-only");
  if (command.keeps) {
    if (!from.guild || !from.channel) return sayNow("servers-only");
    deps.memory.set(`notices:${from.guild}`, from.channel);
    return sayNow("notices-set");
  }
  const hidden = command.answers === "private" || from.guild === null;
  const { given, picture } = givenBy(data.type === 1 ? (data.options as Parameters<typeof givenBy>[0]) : undefined);
  const target = onMessage ? Object.values(data.resolved.messages)[0] : undefined;
  const told = toldBy(command, target ? { message: wordsOf(target, deps.me()) } : given);
  const attachment = target ? pictureOf(target.attachments) : picture && data.type === 1 ? (data.resolved?.attachments?.[picture] ?? null) : null;
  const quiet = hidden || command.answers === "whisper";
  if (!hidden && from.guild && from.channel) deps.memory.set(`last:${from.guild}`, from.channel);
  const how = manner(from, hidden, quiet);
  const defer = quiet ? "private-reply" : "reply";
  const message = messageOf(from, hidden, deps.now(), told, quiet);
  if (!attachment) return converse(deps, from, message, how, defer);
  const urgent = talk.urgent(message);
  if (urgent) return converse(deps, from, message, how, defer);
  const withPicture = fetchPicture(attachment, deps.picture_hosts).then((came) => talk.ask({ ...message, ...came }, null));
  return exchange(deps.exchange(from), interaction, defer, shown(deps, from, withPicture, how));
}

async function onPress(deps: InteractionDeps, from: Asked, interaction: APIMessageComponentInteraction): Promise<void> {
  const { talk, cards } = deps;
  const pressed = readCustomId(interaction.data.custom_id);
  const picked = "values" in interaction.data ? interaction.data.values[0] : undefined;
  const how = manner(from, from.alone, true);
  const defer = cards.isCard(interaction.message.id) ? "update" : interaction.guild_id === undefined ? "reply" : "private-reply";
  const choose = (choice: string): Promise<void> => converse(deps, from, messageOf(from, from.alone, deps.now(), { choice }), how, defer);
  const old = (): Promise<void> => exchange(deps.exchange(from), interaction, "private-reply", Promise.resolve(talk.say("expired", from.locale, interaction.guild_id !== undefined)));
  if (!pressed) return old();
  if (pressed.action === "is") return choose(pressed.choice);
  if (pressed.action === "form") return openForm(deps, from, pressed.ref, pressed.at);
  if (pressed.action === "share") return share(deps, from, pressed.ref);
  const option = pressed.action === "pick" ? readOption(picked ?? "") : pressed.at;
  if (typeof option === "string") return choose(option);
  const reply = await shownBefore(deps, from, pressed.ref);
  const choice = reply && outline(reply.answer, { render: deps.render, reader: reply.reader }).numbered.find(({ number }) => number === option)?.id;
  return choice ? choose(choice) : old();
}

const shownBefore = (deps: InteractionDeps, from: Asked, ref: string): Promise<Reply | null> =>
  deps.core.shown?.({ adapter: "discord", native_id: ref, identity: { network: "discord", id: from.user } }).catch(() => null) ?? Promise.resolve(null);

/** What an answer's form asks; empty fields for somebody else's answer, whose values are nobody else's business. */
async function formOf(deps: InteractionDeps, from: Asked, ref: string, at: number) {
  const reply = await shownBefore(deps, from, ref);
  const { number } = formPage(at);
  const form = reply && outline(reply.answer, { render: deps.render, reader: reply.reader }).forms.find((one) => one.choice.number === number);
  if (!reply || !form) return null;
  const own = from.alone ? form : { ...form, fields: form.fields.map(({ value: _, ...field }) => field) };
  return { form: own, label: labels({ render: deps.render, reader: reply.reader }) };
}

/** A modal must be the first answer: nothing may be deferred before it. */
async function openForm(deps: InteractionDeps, from: Asked, ref: string, at: number): Promise<void> {
  const { talk, wire } = deps;
  const out = deps.exchange(from);
  const started = out.monotonic();
  const late = new Promise<null>((resolve) => setTimeout(resolve, MODAL_CAP_MS, null));
  const found = await Promise.race([formOf(deps, from, ref, at), late]);
  if (!found) return exchange(out, from.interaction, "private-reply", Promise.resolve(talk.say("expired", from.locale, from.interaction.guild_id !== undefined)));
  const modal = renderModal(found.form, formPage(at).page, ref, found.label);
  if ((await acknowledge(out, started, () => wire.modal(from.interaction.id, from.interaction.token, modal))) === "yes") out.count("answered");
}

async function onModal(deps: InteractionDeps, from: Asked, interaction: APIModalSubmitInteraction): Promise<void> {
  const { talk } = deps;
  const pressed = readCustomId(interaction.data.custom_id);
  const filled = filledIn(interaction.data.components);
  const how = manner(from, from.alone, true);
  const defer = interaction.guild_id === undefined ? "reply" : "private-reply";
  const words = Object.values(filled).filter((value) => typeof value === "string").join("\n");
  const base = messageOf(from, from.alone, deps.now(), {});
  const urgent = talk.urgent({ ...base, text: words });
  if (urgent) return converse(deps, from, { ...base, text: words }, how, defer);

  const answered = (async (): Promise<Reply | null | "failed" | "expired"> => {
    const found = pressed && pressed.action === "form" ? await formOf(deps, from, pressed.ref, pressed.at) : null;
    if (!found) return "expired";
    return talk.ask({ ...base, form: { id: found.form.id, values: readModal(found.form, filled) } }, null);
  })();
  deps.suggestions.forget(from.user);
  await exchange(deps.exchange(from), interaction, defer, answered.then((reply) => (reply === "expired" ? talk.say("expired", from.locale, how.quiet) : shown(deps, from, Promise.resolve(reply), how))));
}

async function onTyping(deps: InteractionDeps, from: Asked, interaction: Extract<APIInteraction, { type: 4 }>): Promise<void> {
  const out = deps.exchange(from);
  const started = out.monotonic();
  const command = deps.commands.slash.find(({ name }) => name.en === interaction.data.name);
  const typed = (interaction.data.options as readonly { name: string; value?: unknown; focused?: boolean }[] | undefined)?.find((one) => one.focused);
  const list = command?.options?.find((one) => one.name.en === typed?.name)?.suggests;
  const who = messageOf(from, true, deps.now(), {});
  const choices = list ? await deps.suggestions.for(who, list, String(typed?.value ?? "")) : [];
  if ((await acknowledge(out, started, () => deps.wire.suggest(interaction.id, interaction.token, choices))) === "yes") out.count("answered");
}

/** The same answer for everybody in the channel, whole, with its cautions; nothing to press for others. */
async function share(deps: InteractionDeps, from: Asked, ref: string): Promise<void> {
  const { talk, wire, render } = deps;
  const work = (async (): Promise<Shown> => {
    const reply = await shownBefore(deps, from, ref);
    if (!reply || !from.channel || !from.guild) return talk.say("expired", from.locale, true);
    const note = talk.label(from.locale)("shown-by", { name: from.name });
    const answer = await talk.drawn(withoutChoices(reply.answer), reply.reader, mayAttach(from));
    const messages = some(renderDiscord(answer, { render, reader: reply.reader, ref, note }));
    try {
      for (const [at, message] of messages.entries()) await wire.post(from.channel, `${from.interaction.id}/share/${at}`, message);
      return talk.say("shown-here", from.locale, true);
    } catch (error) {
      return talk.say(isClosed(error) ? "no-right-here" : "failed", from.locale, true);
    }
  })();
  await exchange(deps.exchange(from), from.interaction, "private-reply", work);
}
