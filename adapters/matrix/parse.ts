/** What an event in clear says, and whether it is meant for us. Pure; the server and other people may have written anything into it. */
import { plain } from "../plain.ts";

export interface Clear {
  readonly event_id: string;
  readonly sender: string;
  readonly type: string;
  readonly content: Readonly<Record<string, unknown>>;
}

export interface Surroundings {
  readonly me: string;
  readonly my_name: string;
  readonly is_private: boolean;
  /** what a message in this group starts with when it is meant for us */
  readonly prefix: string;
  readonly isOurs: (event_id: string) => boolean;
}

export interface Relation {
  /** the event that starts the thread in which it was said */
  readonly thread: string | null;
  readonly reply_to: string | null;
}

export type Parsed =
  | { readonly kind: "nothing" }
  | { readonly kind: "reaction"; readonly to: string; readonly key: string }
  | { readonly kind: "edit"; readonly of: string; readonly text: string }
  | (Relation & { readonly kind: "said"; readonly text: string; readonly whole: string; readonly addressed: boolean })
  /** a picture, a voice message, a file */
  | (Relation & { readonly kind: "other"; readonly addressed: boolean });

/** Longer ones are cut: nobody types so much, and everything after would have to read it. */
const MOST = 6_000;
const NOTHING: Parsed = { kind: "nothing" };

export function parse(event: Clear, around: Surroundings): Parsed {
  if (event.sender === around.me) return NOTHING;
  const relates = record(event.content["m.relates_to"]);
  const target = string(relates.event_id);
  if (event.type === "m.reaction") {
    const key = string(relates.key);
    return relates.rel_type === "m.annotation" && target && key ? { kind: "reaction", to: target, key } : NOTHING;
  }
  if (event.type !== "m.room.message") return NOTHING;
  const msgtype = string(event.content.msgtype);
  if (relates.rel_type === "m.replace") {
    const body = string(record(event.content["m.new_content"]).body);
    return target && body && msgtype === "m.text" ? { kind: "edit", of: target, text: plain(body) } : NOTHING;
  }
  const thread = relates.rel_type === "m.thread" ? target : null;
  const in_reply_to = string(record(relates["m.in_reply_to"]).event_id);
  const reply_to = relates.is_falling_back === true ? null : in_reply_to;
  const relation: Relation = { thread, reply_to };
  const answersUs = [reply_to, thread].some((id) => id !== null && around.isOurs(id));
  switch (msgtype) {
    case "m.text":
    case "m.emote":
      break;
    case "m.image":
    case "m.audio":
    case "m.video":
    case "m.file":
      return { kind: "other", ...relation, addressed: around.is_private || answersUs || mentioned(event.content, around) };
    default:
      return NOTHING;
  }
  const body = withoutQuote(plain(string(event.content.body) ?? ""), in_reply_to !== null);
  const called = withoutCall(body, around);
  const text = (called ?? body).trim();
  if (text === "" && called === null) return NOTHING;
  const addressed = around.is_private || called !== null || answersUs || mentioned(event.content, around);
  return { kind: "said", ...relation, text: text.slice(0, MOST), whole: text, addressed };
}

function mentioned(content: Clear["content"], { me }: Surroundings): boolean {
  const mentions = content["m.mentions"];
  if (mentions !== undefined) {
    const { user_ids } = record(mentions);
    return Array.isArray(user_ids) && user_ids.includes(me);
  }
  // clients from before m.mentions make a link of the name
  return (string(content.formatted_body) ?? "").includes(`https://matrix.to/#/${me}`);
}

/** Without our name or the room's prefix at its start; null when it starts with neither. */
function withoutCall(body: string, { me, my_name, prefix }: Surroundings): string | null {
  const local = me.slice(1).split(":")[0] ?? "";
  for (const name of [prefix, me, my_name, `@${my_name}`, `@${local}`]) {
    if (name === "" || !body.toLowerCase().startsWith(name.toLowerCase())) continue;
    const rest = body.slice(name.length);
    if (/^\s*[:,]?(\s|$)/u.test(rest) || /\W$/u.test(name)) return rest.replace(/^\s*[:,]?\s*/u, "");
  }
  return null;
}

/** Replies of older clients carry what they answer as quoted lines. */
const withoutQuote = (body: string, isReply: boolean): string => (isReply ? body.replace(/^(> .*(\n|$))+\n?/u, "") : body);

const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
const string = (value: unknown): string | null => (typeof value === "string" && value !== "" ? value : null);

/** A number as the key of a reaction: "2" with the sign that makes a key of it, in all the ways in which clients send it, or in digits. */
export function numberOf(key: string): number | null {
  if (key.startsWith("\u{1F51F}")) return 10;
  const found = /^(?:([1-9])\uFE0F?\u20E3\uFE0F?|([1-9]\d?))$/u.exec(key);
  return found ? Number(found[1] ?? found[2]) : null;
}
/** Keys may be any words; only the first ten numbers have a sign of their own. */
export const keyFor = (number: number): string => (number < 10 ? `${number}\uFE0F\u20E3` : number === 10 ? "\u{1F51F}" : String(number));
