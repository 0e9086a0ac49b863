/** Events as the platform sends them: a server, people, interactions of every kind, messages. Ids are snowflakes of counted time. */
export type Json = Record<string, any>;

export const ids = { app: "900000000000000001", bot: "900000000000000002", guild: "900000000000000100", channel: "900000000000000200", other_guild: "900000000000000300" } as const;

let counted = 910_000_000_000_000_000n;
export const snowflake = (): string => String((counted += 4_194_304n));

export const user = (id: string, name = `user${id.slice(-3)}`): Json => ({ id, username: name, discriminator: "0", global_name: name, avatar: null });
export const BOT = { ...user(ids.bot, "gleed"), bot: true };

const MEMBER_BITS = String((1n << 11n) | (1n << 10n));
export const MANAGER_BITS = String(1n << 5n);
/** view, send, embed, attach, threads, send in threads */
export const APP_BITS = String((1n << 10n) | (1n << 11n) | (1n << 14n) | (1n << 15n) | (1n << 35n) | (1n << 38n));

export const guild = (id: string): Json => ({
  id, name: `server ${id.slice(-3)}`, icon: null, owner_id: "1", afk_timeout: 300, verification_level: 0, default_message_notifications: 0, explicit_content_filter: 0,
  roles: [{ id, name: "@everyone", color: 0, hoist: false, position: 0, permissions: APP_BITS, managed: false, mentionable: false, flags: 0 }],
  emojis: [], stickers: [], features: [], mfa_level: 0, system_channel_flags: 0, premium_tier: 0, preferred_locale: "en-US", nsfw_level: 0, premium_progress_bar_enabled: false,
  joined_at: "2026-01-01T00:00:00.000Z", large: false, unavailable: false, member_count: 3, voice_states: [], presences: [], threads: [], stage_instances: [], guild_scheduled_events: [],
  members: [{ user: BOT, roles: [], joined_at: "2026-01-01T00:00:00.000Z", deaf: false, mute: false, flags: 0 }],
  channels: [{ id: id === ids.guild ? ids.channel : `${BigInt(id) + 1n}`, type: 0, name: "fires", position: 0, permission_overwrites: [], nsfw: false }],
});

export interface From {
  readonly user: string;
  /** a direct message with the bot when absent */
  readonly guild?: string;
  readonly channel?: string;
  readonly channel_type?: number;
  readonly moderator?: boolean;
  readonly locale?: string;
  readonly app_bits?: string;
  /** brought along by the person, not a member of the server */
  readonly user_install?: boolean;
}

function base(type: number, from: From, data: Json): Json {
  const member = { user: user(from.user), nick: null, roles: [], joined_at: "2026-01-01T00:00:00.000Z", deaf: false, mute: false, flags: 0, permissions: from.moderator ? MANAGER_BITS : MEMBER_BITS };
  const channel = from.channel ?? (from.guild ? ids.channel : `8${from.user.slice(1)}`);
  return {
    id: snowflake(), application_id: ids.app, type, version: 1, data, entitlements: [], attachment_size_limit: 10_485_760, app_permissions: from.app_bits ?? APP_BITS,
    channel: { id: channel, type: from.channel_type ?? (from.guild ? 0 : 1) }, channel_id: channel, locale: from.locale ?? "en-GB",
    authorizing_integration_owners: from.user_install ? { 1: from.user } : from.guild ? { 0: from.guild } : { 1: from.user }, context: from.guild ? 0 : 1,
    ...(from.guild ? { guild_id: from.guild, guild: { id: from.guild, locale: "en-US", features: [] }, guild_locale: "en-US", member } : { user: user(from.user) }),
  };
}

const option = ([name, value]: [string, unknown]): Json => ({ name, type: typeof value === "boolean" ? 5 : 3, value });

export const slash = (name: string, options: Json, from: From): Json => base(2, from, { id: "1", type: 1, name, options: Object.entries(options).map(option) });
export const withPicture = (name: string, options: Json, attachment: Json, from: From): Json =>
  base(2, from, { id: "1", type: 1, name, options: [...Object.entries(options).map(option), { name: "photo", type: 11, value: attachment.id }], resolved: { attachments: { [attachment.id]: attachment } } });
export const onMessage = (name: string, target: Json, from: From): Json => base(2, from, { id: "2", type: 3, name, target_id: target.id, resolved: { messages: { [target.id]: target } } });
export const press = (custom_id: string, message: Json, from: From): Json => ({ ...base(3, { ...from, channel: message.channel_id }, { custom_id, component_type: 2 }), message });
export const pick = (custom_id: string, values: string[], message: Json, from: From): Json => ({ ...base(3, { ...from, channel: message.channel_id }, { custom_id, component_type: 3, values }), message });
export const typing = (name: string, focused: string, value: string, from: From): Json => base(4, from, { id: "1", type: 1, name, options: [{ name: focused, type: 3, value, focused: true }] });
export const submit = (custom_id: string, values: Record<string, string | string[]>, message: Json | null, from: From): Json => ({
  ...base(5, { ...from, ...(message ? { channel: message.channel_id } : {}) }, {
    custom_id,
    components: Object.entries(values).map(([id, value], at) => ({ type: 18, id: at * 2 + 1, component: { id: at * 2 + 2, custom_id: id, ...(typeof value === "string" ? { type: 4, value } : { type: 3, values: value }) } })),
  }),
  ...(message ? { message } : {}),
});

export const written = (content: string, from: From & { readonly attachments?: Json[] }): Json => ({
  id: snowflake(), channel_id: from.channel ?? (from.guild ? ids.channel : `8${from.user.slice(1)}`), author: user(from.user), content, timestamp: "2026-11-25T18:00:00.000Z", edited_timestamp: null,
  tts: false, mention_everyone: false, mentions: content.includes(`<@${ids.bot}>`) ? [BOT] : [], mention_roles: [], attachments: from.attachments ?? [], embeds: [], pinned: false, type: 0, flags: 0, components: [],
  ...(from.guild ? { guild_id: from.guild, channel_type: 0, member: { roles: [], joined_at: "2026-01-01T00:00:00.000Z", deaf: false, mute: false, flags: 0 } } : { channel_type: 1 }),
});
