/** The requests that Gleed makes of Discord, as plain JSON over discord.js' REST. */
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { type RawFile, type REST, Routes } from "discord.js";
import { EPHEMERAL, type DiscordMessage, type Modal } from "./api.ts";

interface Named {
  readonly id: string;
}

export interface Wire {
  /** @returns id of the message it made, when asked for */
  reply(id: string, token: string, message: DiscordMessage, wanted: boolean): Promise<string | null>;
  update(id: string, token: string, message: DiscordMessage): Promise<void>;
  /** @param how as a new message, or quietly for one that will be changed */
  defer(id: string, token: string, how: "reply" | "private-reply" | "update"): Promise<void>;
  modal(id: string, token: string, modal: Modal): Promise<void>;
  suggest(id: string, token: string, choices: readonly { name: string; value: string }[]): Promise<void>;
  editReply(token: string, message: DiscordMessage): Promise<string>;
  followUp(token: string, message: DiscordMessage): Promise<string>;
  /** @param key the same key within some minutes sends nothing twice */
  post(channel: string, key: string, message: DiscordMessage, answers?: string): Promise<string>;
  edit(channel: string, id: string, message: DiscordMessage): Promise<void>;
  remove(channel: string, id: string): Promise<void>;
  direct(user: string): Promise<string>;
  thread(channel: string, message: string, name: string): Promise<string>;
  typing(channel: string): Promise<void>;
}

/** Day of a thread's sleep after the last word, in minutes. */
const ASLEEP_AFTER_MIN = 1440;

/**
 * @param bot with the token, under the platform's limit for all requests
 * @param open for what hangs on an interaction's own token: the platform does not count it, and the bot's token never goes there
 */
export function wire(bot: REST, open: REST, application: () => string): Wire {
  const directs = new Map<string, string>();

  const callback = (id: string, token: string, type: number, data?: unknown, wanted = false): Promise<unknown> =>
    open.post(Routes.interactionCallback(id, token), {
      auth: false,
      body: { type, ...(data === undefined ? {} : { data }) },
      ...(wanted ? { query: new URLSearchParams({ with_response: "true" }) } : {}),
    });

  return {
    async reply(id, token, message, wanted) {
      const made = (await callback(id, token, 4, message.payload, wanted)) as { resource?: { message?: Named } } | undefined;
      return made?.resource?.message?.id ?? null;
    },
    async update(id, token, message) {
      await callback(id, token, 7, edited(message));
    },
    async defer(id, token, how) {
      await callback(id, token, how === "update" ? 6 : 5, how === "private-reply" ? { flags: EPHEMERAL } : undefined);
    },
    async modal(id, token, modal) {
      await callback(id, token, 9, modal);
    },
    async suggest(id, token, choices) {
      await callback(id, token, 8, { choices });
    },
    async editReply(token, message) {
      const route = Routes.webhookMessage(application(), token, "@original");
      return ((await open.patch(route, { auth: false, body: edited(message), files: await filesOf(message) })) as Named).id;
    },
    async followUp(token, message) {
      return ((await open.post(Routes.webhook(application(), token), { auth: false, body: message.payload, files: await filesOf(message) })) as Named).id;
    },
    async post(channel, key, message, answers) {
      const body = {
        ...message.payload,
        flags: message.payload.flags & ~EPHEMERAL,
        nonce: nonce(key),
        enforce_nonce: true,
        ...(answers ? { message_reference: { message_id: answers, fail_if_not_exists: false } } : {}),
      };
      return ((await bot.post(Routes.channelMessages(channel), { body, files: await filesOf(message) })) as Named).id;
    },
    async edit(channel, id, message) {
      await bot.patch(Routes.channelMessage(channel, id), { body: edited(message), files: await filesOf(message) });
    },
    async remove(channel, id) {
      await bot.delete(Routes.channelMessage(channel, id));
    },
    async direct(user) {
      const known = directs.get(user);
      if (known) return known;
      const { id } = (await bot.post(Routes.userChannels(), { body: { recipient_id: user } })) as Named;
      if (directs.size > 5_000) directs.clear();
      directs.set(user, id);
      return id;
    },
    async thread(channel, message, name) {
      return ((await bot.post(Routes.threads(channel, message), { body: { name, auto_archive_duration: ASLEEP_AFTER_MIN } })) as Named).id;
    },
    async typing(channel) {
      await bot.post(Routes.channelTyping(channel));
    },
  };
}

/** At most 25 characters, the same for the same key. */
const nonce = (key: string): string => createHash("sha256").update(key).digest("base64url").slice(0, 24);

/** What a message becomes: nobody-else-sees-it is decided when it is made, and files that are no longer named go. */
const edited = ({ payload }: DiscordMessage) => ({ ...payload, flags: payload.flags & ~EPHEMERAL, attachments: payload.attachments ?? [] });

const TYPES: Readonly<Record<string, string>> = { png: "image/png", svg: "image/svg+xml", jpg: "image/jpeg", webp: "image/webp" };

const filesOf = (message: DiscordMessage): Promise<RawFile[]> =>
  Promise.all(message.files.map(async (file) => ({
    name: file.name,
    data: "path" in file ? await readFile(file.path) : Buffer.from(file.content),
    contentType: "path" in file ? (TYPES[file.name.split(".").at(-1) ?? ""] ?? "application/octet-stream") : file.media_type,
  })));
