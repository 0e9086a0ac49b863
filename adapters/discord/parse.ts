/** Discord's events as `Message`s. Everything is read from the raw event, so that gateway and HTTP bring the same. */
import type { APIAttachment, APIInteraction, APIMessage, GatewayMessageCreateDispatchData } from "discord.js";
import type { Identity, Message, Place } from "../../src/message.ts";

export const NETWORK = "discord";

const EPHEMERAL = 64n;
const ADMINISTRATOR = 1n << 3n;
const MANAGE_GUILD = 1n << 5n;
export const ATTACH_FILES = 1n << 15n;

/** Ids of places: a group is a server with all its channels; a private place is a person, wherever they see the answer alone. */
export const groupPlace = (guild: string): string => guild;
export const privatePlace = (user: string): string => `@${user}`;
export const userOfPlace = (place: string): string | null => (place.startsWith("@") ? place.slice(1) : null);

export interface Asked {
  readonly interaction: APIInteraction;
  readonly user: string;
  readonly name: string;
  readonly channel: string | null;
  /** the server, where the app is one of its members and may post */
  readonly guild: string | null;
  /** only the person sees it: a direct message, or the message whose button was pressed */
  readonly alone: boolean;
  readonly moderates: boolean;
  readonly may: bigint;
  readonly locale: string;
}

const has = (bits: bigint, bit: bigint): boolean => (bits & bit) === bit;

export function asked(interaction: APIInteraction): Asked | null {
  const user = interaction.member?.user ?? interaction.user;
  if (!user) return null;
  const owners = (interaction.authorizing_integration_owners ?? {}) as Record<string, string>;
  const installed = interaction.guild_id !== undefined && (Object.keys(owners).length === 0 || "0" in owners);
  const rights = BigInt(interaction.member?.permissions ?? "0");
  const message = "message" in interaction ? interaction.message : undefined;
  return {
    interaction,
    user: user.id,
    name: interaction.member?.nick ?? user.global_name ?? user.username,
    channel: interaction.channel?.id ?? null,
    guild: installed ? (interaction.guild_id ?? null) : null,
    alone: interaction.guild_id === undefined || (message !== undefined && (BigInt(message.flags ?? 0) & EPHEMERAL) !== 0n),
    moderates: has(rights, ADMINISTRATOR) || has(rights, MANAGE_GUILD),
    may: BigInt(interaction.app_permissions ?? "0"),
    locale: "locale" in interaction && interaction.locale ? interaction.locale : "en-GB",
  };
}

export const mayAttach = ({ may, interaction }: Asked): boolean => interaction.guild_id === undefined || has(may, ADMINISTRATOR) || has(may, ATTACH_FILES);

export const identityOf = (id: string, name: string): Identity => ({ network: NETWORK, id, name });

/** @param whispers the answer is shown to whoever asked or pressed, and to nobody else */
const place = (guild: string | null, user: string, moderates: boolean, whispers = false): Place =>
  guild === null
    ? { network: NETWORK, id: privatePlace(user), kind: "private", encrypted: null }
    : { network: NETWORK, id: groupPlace(guild), kind: "group", encrypted: null, moderates, ...(whispers ? { whispers } : {}) };

/** @param privately the answer is for this person alone, so the talk is theirs and not the group's */
export function messageOf(from: Asked, privately: boolean, now_ms: number, more: Partial<Message>, whispers = more.choice !== undefined): Message {
  return {
    adapter: NETWORK,
    native_id: from.interaction.id,
    identity: identityOf(from.user, from.name),
    place: place(privately ? null : from.guild, from.user, from.moderates, whispers),
    received_at_ms: now_ms,
    locale: from.locale,
    ...more,
  };
}

export interface Said {
  readonly id: string;
  readonly channel: string;
  readonly guild: string | null;
  readonly user: string;
  readonly text: string;
  readonly picture: APIAttachment | null;
  readonly message: Message;
}

/** A message that is meant for Gleed: direct, or one that names it. Null for everything else. */
export function said(event: GatewayMessageCreateDispatchData, me: string, now_ms: number): Said | null {
  if (event.author.bot || event.webhook_id || event.author.id === me || (event.type !== 0 && event.type !== 19)) return null;
  const guild = event.guild_id ?? null;
  if (guild !== null && !event.mentions.some((one) => one.id === me)) return null;
  const text = wordsOf(event, me);
  const picture = pictureOf(event.attachments);
  return {
    id: event.id, channel: event.channel_id, guild, user: event.author.id, text, picture,
    message: {
      adapter: NETWORK,
      native_id: event.id,
      identity: identityOf(event.author.id, event.member?.nick ?? event.author.global_name ?? event.author.username),
      place: place(guild, event.author.id, false),
      received_at_ms: now_ms,
      text,
    },
  };
}

/** What somebody wrote, without the call to Gleed itself. */
export const wordsOf = (message: Pick<APIMessage, "content">, me: string): string => message.content.replaceAll(new RegExp(`<@!?${me}>`, "g"), " ").replace(/[^\S\n]+/g, " ").trim();

export const pictureOf = (attachments: readonly APIAttachment[] | undefined): APIAttachment | null =>
  attachments?.find((one) => one.content_type?.startsWith("image/")) ?? null;

/** What was filled into a modal, by the ids of its fields. */
export function filledIn(components: readonly unknown[]): Record<string, string | readonly string[]> {
  const filled: Record<string, string | readonly string[]> = {};
  const read = (one: Record<string, unknown>): void => {
    const id = one.custom_id;
    if (typeof id === "string" && typeof one.value === "string") filled[id] = one.value;
    else if (typeof id === "string" && Array.isArray(one.values)) filled[id] = one.values.map(String);
    if (one.component) read(one.component as Record<string, unknown>);
    if (Array.isArray(one.components)) for (const inner of one.components) read(inner as Record<string, unknown>);
  };
  for (const component of components) read(component as Record<string, unknown>);
  return filled;
}
