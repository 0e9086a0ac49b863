/** The REST side of the stand-in: acknowledgements in time and once, tokens that run out, messages, nonces, threads, commands. */
import type { IncomingMessage, ServerResponse } from "node:http";
import { modalOverLimits, overLimits, commandsOverLimits } from "../../adapters/discord/limits.ts";
import type { Check } from "./description.ts";
import { BOT, ids, type Json, snowflake, user } from "./events.ts";

export interface Recorded {
  readonly method: string;
  /** as in the description: without version, ids as they are */
  readonly path: string;
  readonly query: URLSearchParams;
  readonly body: any;
  readonly files: readonly { readonly name: string; readonly type: string; readonly bytes: number }[];
  readonly at_ms: number;
  readonly authorised: boolean;
}
export type Fault = { readonly status: number; readonly body?: Json; readonly headers?: Record<string, string> } | "cut" | "hang" | null;

/** What became of one interaction. */
export interface Tracked {
  readonly interaction: Json;
  dispatched_ms: number;
  acknowledged_ms: number | null;
  /** when the first message of the answer stood */
  answered_ms: number | null;
  acks: Json[];
  /** refused acknowledgements: told that one was there already */
  repeats: number;
  /** the message it made, or changed */
  message: Json | null;
  answers: number;
  followUps: Json[];
}

export interface Rest {
  readonly requests: Recorded[];
  /** what was wrong with requests, by description and limits */
  readonly problems: string[];
  readonly tracked: Map<string, Tracked>;
  readonly messages: Map<string, Json>;
  readonly commands: Map<string, Json[]>;
  readonly closedDirect: Set<string>;
  readonly closedChannels: Set<string>;
  fault: ((request: Recorded) => Fault) | null;
  track(interaction: Json): Tracked;
  /** let go of what was recorded so far */
  forget(): void;
  handle(request: IncomingMessage, response: ServerResponse): void;
}

export interface RestOptions {
  /** null: requests are not looked at, which costs time */
  readonly check: Check | null;
  readonly token: () => string;
  readonly gateway: () => string;
  readonly shards: number;
  readonly token_ms: number;
}

const V2 = 1 << 15;
export const PNG = Buffer.from("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==", "base64");
const refused = (status: number, code: number, message: string): { status: number; body: Json } => ({ status, body: { code, message } });

export function rest(options: RestOptions): Rest {
  const requests: Recorded[] = [];
  const problems: string[] = [];
  const tracked = new Map<string, Tracked>();
  const byToken = new Map<string, Tracked>();
  const messages = new Map<string, Json>();
  const nonces = new Map<string, Json>();
  const commands = new Map<string, Json[]>();
  const state: Rest = { requests, problems, tracked, messages, commands, closedDirect: new Set(), closedChannels: new Set(), fault: null, track, forget, handle };

  function track(interaction: Json): Tracked {
    const one: Tracked = { interaction, dispatched_ms: performance.now(), acknowledged_ms: null, answered_ms: null, acks: [], repeats: 0, message: null, answers: 0, followUps: [] };
    tracked.set(interaction.id, one);
    byToken.set(interaction.token, one);
    return one;
  }

  function forget(): void {
    for (const kept of [tracked, byToken, messages, nonces]) kept.clear();
    requests.length = 0;
  }

  function look(request: Recorded): void {
    if (!options.check) return;
    const bad = (what: string): void => void problems.push(`${request.method} ${request.path.replace(/\d{17,}/g, "#").slice(0, 90)}: ${what}`);
    for (const problem of options.check(request.method, request.path, request.body)) bad(problem);
    if (!request.body) return;
    const files = request.files.map(({ name }) => ({ name, path: name }));
    const isMessage = (body: Json): boolean => Array.isArray(body.components) && body.title === undefined;
    if (request.path.endsWith("/callback")) {
      const { type, data } = request.body;
      if (type === 4 || type === 7) for (const problem of overLimits({ payload: data, files } as never)) bad(problem);
      if (type === 9) for (const problem of modalOverLimits(data)) bad(problem);
      if (type === 8 && (data.choices.length > 25 || data.choices.some((one: Json) => one.name.length < 1 || one.name.length > 100 || one.value.length > 100))) bad("suggestions");
      if (type === 5 && Object.keys(data ?? {}).some((key) => key !== "flags")) bad("a deferral takes nothing but its flag");
    } else if (isMessage(request.body)) for (const problem of overLimits({ payload: request.body, files } as never)) bad(problem);
    if (/\/commands$/.test(request.path)) for (const problem of commandsOverLimits(request.body)) bad(problem);
    if (request.body.nonce !== undefined && String(request.body.nonce).length > 25) bad("a nonce of more than 25");
  }

  const make = (channel: string, body: Json, more: Json = {}): Json => {
    const message = {
      id: snowflake(), channel_id: channel, author: BOT, content: "", timestamp: new Date().toISOString(), edited_timestamp: null, tts: false, mention_everyone: false, mentions: [], mention_roles: [], attachments: [], embeds: [],
      pinned: false, type: 0, flags: body.flags ?? 0, components: body.components ?? [], ...more,
    };
    messages.set(message.id, message);
    return message;
  };

  function callback(request: Recorded, id: string): { status: number; body?: unknown } {
    const one = tracked.get(id);
    const { type, data } = request.body;
    if (!one || performance.now() - one.dispatched_ms > 3_000) return refused(404, 10062, "Unknown interaction");
    if (one.acknowledged_ms !== null) {
      one.repeats += 1;
      return refused(400, 40060, "Interaction has already been acknowledged.");
    }
    one.acknowledged_ms = performance.now();
    one.acks.push({ type, data });
    if (type === 4) one.message = make(one.interaction.channel_id, data);
    if (type === 5) one.message = make(one.interaction.channel_id, { flags: data?.flags ?? 0 });
    if (type === 6 || type === 7) one.message = one.interaction.message;
    if (type === 7) Object.assign(messages.get(one.interaction.message.id) ?? {}, { components: data.components });
    if (type !== 5 && type !== 6) {
      one.answered_ms = performance.now();
      one.answers += 1;
    }
    if (request.query.get("with_response") !== "true") return { status: 204 };
    return { status: 200, body: { interaction: { id, type: one.interaction.type }, resource: { type, message: one.message } } };
  }

  function webhook(request: Recorded, token: string, which: string | undefined): { status: number; body?: unknown } {
    const one = byToken.get(token);
    if (!one) return refused(404, 10015, "Unknown Webhook");
    if (performance.now() - one.dispatched_ms > options.token_ms) return refused(401, 50027, "Invalid Webhook Token");
    if (one.acknowledged_ms === null) return refused(404, 10015, "Unknown Webhook");
    const done = (message: Json): { status: number; body: Json } => {
      one.answered_ms ??= performance.now();
      return { status: 200, body: message };
    };
    if (request.method === "POST") {
      if (one.interaction.authorizing_integration_owners["0"] === undefined && one.interaction.guild_id !== undefined && one.followUps.length >= 5) return refused(400, 40094, "Follow-up limit reached");
      const message = make(one.interaction.channel_id, request.body);
      one.followUps.push(message);
      if (one.answered_ms === null) one.answers += 1;
      return done(message);
    }
    const message = which === "@original" ? one.message : messages.get(which ?? "");
    if (!message) return refused(404, 10008, "Unknown Message");
    if (request.method === "GET") return { status: 200, body: message };
    if (request.method === "DELETE") return { status: 204 };
    if (one.answered_ms === null) one.answers += 1;
    Object.assign(message, { components: request.body.components, flags: (message.flags & 64) | (request.body.flags & V2) });
    return done(message);
  }

  function post(request: Recorded, channel: string): { status: number; body?: unknown } {
    if (state.closedChannels.has(channel)) return refused(403, 50013, "Missing Permissions");
    if (state.closedDirect.has(channel)) return refused(403, 50007, "Cannot send messages to this user");
    const key = request.body.enforce_nonce ? `${channel}/${request.body.nonce}` : null;
    const before = key ? nonces.get(key) : undefined;
    if (before) return { status: 200, body: before };
    const message = make(channel, request.body, { nonce: request.body.nonce, message_reference: request.body.message_reference });
    if (key) nonces.set(key, message);
    return { status: 200, body: message };
  }

  function route(request: Recorded): { status: number; body?: unknown } {
    const { method, path } = request;
    const parts = path.split("/").slice(1);
    if (!request.authorised && !/^\/(webhooks|interactions)\//.test(path)) return refused(401, 0, "401: Unauthorized");
    if (path === "/gateway/bot") return { status: 200, body: { url: options.gateway(), shards: options.shards, session_start_limit: { total: 1000, remaining: 999, reset_after: 86_400_000, max_concurrency: 16 } } };
    if (path === "/users/@me") return { status: 200, body: BOT };
    if (path === "/applications/@me" || path === "/oauth2/applications/@me") return { status: 200, body: { id: ids.app, name: "gleed", description: "", flags: 0, bot: BOT, verify_key: "00" } };
    if (path === "/users/@me/channels") return { status: 200, body: { id: `8${String(request.body.recipient_id).slice(1)}`, type: 1, recipients: [user(request.body.recipient_id)], last_message_id: null, flags: 0 } };
    if (parts[0] === "interactions") return callback(request, parts[1] ?? "");
    if (parts[0] === "webhooks") return webhook(request, parts[2] ?? "", parts[4]);
    if (parts[0] === "applications" && parts.at(-1) === "commands") {
      const scope = parts[2] === "guilds" ? (parts[3] ?? "") : "global";
      if (method === "PUT") commands.set(scope, request.body.map((one: Json) => ({ ...one, id: snowflake(), application_id: ids.app, version: snowflake() })));
      return { status: 200, body: commands.get(scope) ?? [] };
    }
    if (parts[0] === "channels" && parts[2] === "typing") return { status: 204 };
    if (parts[0] === "channels" && parts[4] === "threads") {
      const source = messages.get(parts[3] ?? "");
      if (state.closedChannels.has(parts[1] ?? "")) return refused(403, 50013, "Missing Permissions");
      return source && (source.flags & 64) === 0 ? { status: 201, body: { id: source.id, type: 11, parent_id: parts[1], name: request.body.name } } : refused(404, 10008, "Unknown Message");
    }
    if (parts[0] === "channels" && parts[2] === "messages") {
      if (method === "POST") return post(request, parts[1] ?? "");
      const message = messages.get(parts[3] ?? "");
      if (!message) return refused(404, 10008, "Unknown Message");
      if (method === "DELETE") messages.delete(message.id);
      if (method === "PATCH") Object.assign(message, { components: request.body.components });
      return method === "DELETE" ? { status: 204 } : { status: 200, body: message };
    }
    return refused(404, 0, "404: Not Found");
  }

  async function read(request: IncomingMessage): Promise<Recorded> {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    const raw = Buffer.concat(parts);
    const url = new URL(request.url ?? "/", "http://127.0.0.1");
    const type = request.headers["content-type"] ?? "";
    let body: unknown;
    const files: { name: string; type: string; bytes: number }[] = [];
    if (type.startsWith("multipart/")) {
      const form = await new Response(raw, { headers: { "content-type": type } }).formData();
      body = JSON.parse(String(form.get("payload_json")));
      for (const [key, value] of form.entries()) if (/^files\[\d+\]$/.test(key) && typeof value !== "string") files.push({ name: value.name, type: value.type, bytes: value.size });
    } else if (raw.length > 0) body = JSON.parse(raw.toString("utf8"));
    return { method: request.method ?? "GET", path: decodeURIComponent(url.pathname.replace(/^\/api\/v\d+/, "")), query: url.searchParams, body, files, at_ms: performance.now(), authorised: request.headers.authorization === `Bot ${options.token()}` };
  }

  function handle(request: IncomingMessage, response: ServerResponse): void {
    if (request.url?.startsWith("/attachments/")) return void response.writeHead(200, { "content-type": "image/png" }).end(PNG);
    read(request).then((recorded) => {
      requests.push(recorded);
      if (requests.length > 60_000) requests.splice(0, 30_000);
      const fault = state.fault?.(recorded) ?? null;
      if (fault === "hang") return;
      if (fault === "cut") return void request.socket.destroy();
      look(recorded);
      const { status, body } = fault ?? route(recorded);
      const headers = { "x-ratelimit-limit": "5000", "x-ratelimit-remaining": "4999", "x-ratelimit-reset-after": "0.100", "x-ratelimit-reset": String(Date.now() / 1000 + 0.1), "x-ratelimit-bucket": recorded.path.replace(/\d+/g, "#").slice(0, 40), ...(fault?.headers ?? {}) };
      response.writeHead(status, { ...headers, ...(status === 204 ? {} : { "content-type": "application/json" }) }).end(status === 204 ? undefined : JSON.stringify(body ?? {}));
    }, () => request.socket.destroy());
  }
  return state;
}
