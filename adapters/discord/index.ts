/** Discord: one client, what comes in handed to the core, what the core says laid out and sent. Holds no word of the domain. */
import type { Server } from "node:http";
import { type APIInteraction, Client, Events, GatewayIntentBits, type GatewayMessageCreateDispatchData, Options, Partials, REST, type RESTOptions, Routes } from "discord.js";
import type { Log } from "../../src/delivery/log.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import type { Adapter, Core } from "../adapter.ts";
import type { Drawn } from "../drawn.ts";
import type { DiscordMessage } from "./api.ts";
import { type Commands, readCommands, register, registration } from "./commands.ts";
import { type Count, type ExchangeDeps, READY_MS, TOKEN_MS } from "./exchange.ts";
import { httpInteractions } from "./http.ts";
import { type InteractionDeps, onInteraction } from "./interactions.ts";
import { cards } from "./live.ts";
import { openMemory, type Memory } from "./memory.ts";
import { type MessageDeps, onMessage } from "./messages.ts";
import { type Asked, NETWORK } from "./parse.ts";
import { failureOf, makeRequest, persist, reason } from "./requests.ts";
import { recent } from "./recent.ts";
import { send, type SendDeps } from "./send.ts";
import { suggestions } from "./suggest.ts";
import { talk } from "./talk.ts";
import { wire } from "./wire.ts";

export { NETWORK };

export interface DiscordOptions {
  /** asked for when connecting, never kept in words */
  readonly token: { reveal(): string };
  readonly render: Renderer;
  readonly reader: Reader;
  readonly log: Log;
  /** file of the adapter's own memory, or `:memory:` */
  readonly memory: string;
  readonly now: () => number;
  /** Discord can do nothing more with these settings: said plainly, once. The process should end, so that a supervisor starts it anew. */
  readonly onFatal: (why: string) => void;
  readonly draw?: Drawn;
  /** another address of the API, for tests on this machine */
  readonly api?: string;
  /** register commands in this server only, where they appear at once */
  readonly guild?: string;
  readonly http?: { readonly public_key: string; readonly port: number };
  readonly knowledge?: string;
  /** times, shortened by tests */
  readonly ready_ms?: number;
  readonly token_ms?: number;
  readonly waitGuildTimeout?: number;
}

export type Counts = Readonly<Record<Count | "interactions" | "messages" | "duplicates", number>>;

export interface DiscordAdapter extends Adapter {
  readonly counts: Counts;
  /** the port of HTTP interactions, once started */
  readonly port: number | null;
}

const PUBLIC_API = "https://discord.com/api";
const CDN_HOSTS = ["cdn.discordapp.com", "media.discordapp.net"];
const REST_TIMEOUT_MS = 10_000;
const SWEEP_MS = 60_000;
const LOGIN_WAITS_MS = [1_000, 2_000, 5_000, 15_000, 60_000];
/** Close codes after which coming back is no use, and what to do about each. */
const HOPELESS: Readonly<Record<number, string>> = {
  4004: "Discord refuses the token. Make a new one in the developer portal and set it.",
  4010: "Discord refuses the shard it was given.",
  4011: "Discord asks for more shards than were started.",
  4013: "Discord does not know an intent that was asked for.",
  4014: "Discord refuses an intent. Gleed needs no privileged one; check the application in the developer portal.",
};

export function discord(options: DiscordOptions): DiscordAdapter {
  const { log, now } = options;
  const api = options.api ?? PUBLIC_API;
  const rest: Partial<RESTOptions> = { api, makeRequest: watched, timeout: REST_TIMEOUT_MS, handlerSweepInterval: SWEEP_MS, hashSweepInterval: SWEEP_MS, invalidRequestWarningInterval: 500 };
  const counts: Record<keyof Counts, number> = { interactions: 0, messages: 0, duplicates: 0, acknowledged: 0, answered: 0, deferred: 0, "too-late": 0, unacknowledged: 0, instead: 0, unanswered: 0 };
  const count = (what: keyof Counts): void => {
    counts[what] += 1;
  };
  const seen = recent(5_000);
  const running = new Set<Promise<unknown>>();
  let client: Client | null = null;
  let server: Server | null = null;
  let memory: Memory | null = null;
  let sending: SendDeps | null = null;
  let stopping = false;
  let hopeless = false;

  function fatal(why: string): void {
    if (hopeless || stopping) return;
    hopeless = true;
    log.error({ network: NETWORK }, why);
    options.onFatal(why);
  }
  const unauthorized = (): void => fatal("Discord no longer accepts the token. Make a new one in the developer portal, set it, and start Gleed again.");

  /** A token that is refused once is refused for good: the library forgets it, and every later request fails. */
  async function watched(...request: Parameters<typeof makeRequest>): ReturnType<typeof makeRequest> {
    const response = await makeRequest(...request);
    if (response.status === 401 && client !== null && !/\/(?:webhooks|interactions)\//.test(request[0])) unauthorized();
    return response;
  }

  function newClient(): Client {
    return new Client({
      intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages],
      partials: [Partials.Channel],
      allowedMentions: { parse: [], repliedUser: false },
      makeCache: Options.cacheWithLimits({ ...Options.DefaultMakeCacheSettings, MessageManager: 0, PresenceManager: 0, GuildMemberManager: { maxSize: 10, keepOverLimit: (member) => member.id === member.client.user.id }, UserManager: { maxSize: 100, keepOverLimit: (user) => user.id === user.client.user.id } }),
      shards: "auto",
      rest,
      ...(options.waitGuildTimeout === undefined ? {} : { waitGuildTimeout: options.waitGuildTimeout }),
    });
  }

  /** Runs to its end before `stop` returns; whatever it throws is logged, never loose. */
  function track(work: () => Promise<unknown>): void {
    const run = work().catch((error) => {
      log.error({ why: reason(error) }, "something that came in could not be worked");
    });
    running.add(run);
    run.finally(() => running.delete(run));
  }

  function handlers(core: Core, from: Client, kept: Memory, commands: Commands): { interaction: (one: APIInteraction) => void; message: (one: GatewayMessageCreateDispatchData) => void } {
    const open = new REST({ ...rest, globalRequestsPerSecond: Number.POSITIVE_INFINITY });
    const me = (): string => from.user?.id ?? "";
    const out = wire(from.rest, open, () => from.application?.id ?? me());
    const stand = cards(kept, out);
    const base = { core, wire: out, cards: stand, render: options.render, reader: options.reader, log, ...(options.draw ? { draw: options.draw } : {}) };
    const ours = talk(base);
    const hosts = new Set([...CDN_HOSTS, ...(options.api ? [new URL(options.api).host] : [])]);
    const exchangeFor = (asker: Asked): ExchangeDeps => ({
      wire: out,
      monotonic: () => performance.now(),
      ready_ms: options.ready_ms ?? READY_MS,
      token_ms: options.token_ms ?? TOKEN_MS,
      count,
      failed: (what, why, failure) => {
        log.warn({ interaction: asker.interaction.id, why, failure }, `${what} did not reach Discord`);
      },
      instead: (messages) => insteadTo(asker, messages),
    });
    async function insteadTo(asker: Asked, messages: readonly DiscordMessage[]): Promise<void> {
      const hidden = asker.guild === null || messages.some(({ payload }) => (payload.flags & 64) !== 0);
      const channel = hidden || asker.channel === null ? await out.direct(asker.user) : asker.channel;
      for (const [at, message] of messages.entries()) await persist(() => out.post(channel, `${asker.interaction.id}/instead/${at}`, message));
    }
    const interactions: InteractionDeps = { ...base, talk: ours, memory: kept, commands, suggestions: suggestions(core, () => performance.now()), exchange: exchangeFor, me, now, picture_hosts: hosts };
    const messages: MessageDeps = { ...base, talk: ours, memory: kept, me, now, picture_hosts: hosts, count, channelType: (id) => from.channels.cache.get(id)?.type ?? null };
    sending = { render: options.render, log, talk: ours, wire: out, cards: stand, memory: kept };
    return {
      interaction(one) {
        if (stopping) return;
        if (!seen(one.id)) return count("duplicates");
        count("interactions");
        if (one.guild_id && one.member) kept.set(`guild-of:${one.member.user.id}`, one.guild_id);
        track(() => onInteraction(interactions, one));
      },
      message(one) {
        if (stopping) return;
        if (!seen(one.id)) return count("duplicates");
        track(async () => {
          if (await onMessage(messages, one)) count("messages");
        });
      },
    };
  }

  function watch(one: Client): void {
    one.on(Events.Error, (error) => log.error({ why: reason(error) }, "Discord's client reports an error"));
    one.on(Events.ShardError, (error, shard) => log.warn({ shard, why: reason(error) }, "the connection to Discord broke; it is taken up again by itself"));
    one.on(Events.ShardDisconnect, ({ code }, shard) => {
      const why = HOPELESS[code];
      if (why) fatal(why);
      else if (!stopping) log.warn({ shard, code }, "disconnected from Discord");
    });
    one.on(Events.ShardResume, (shard, replayed) => log.info({ shard, replayed }, "the connection to Discord goes on where it was"));
    one.on(Events.Invalidated, unauthorized);
    one.on(Events.GuildDelete, ({ id, available }) => {
      if (available === false) return;
      memory?.forget(`notices:${id}`);
      memory?.forget(`last:${id}`);
      log.info({ guild: id }, "taken off a server");
    });
    one.rest.on("rateLimited", ({ global, route, timeToReset }) => log.info({ global, route, wait_ms: timeToReset }, "Discord asks to slow down"));
    one.rest.on("invalidRequestWarning", ({ count: refused, remainingTime }) => log.warn({ refused, within_ms: remainingTime }, "Discord refuses many requests; at 10,000 within ten minutes it closes the door"));
  }

  async function connect(core: Core, kept: Memory, commands: Commands): Promise<Client> {
    for (let tries = 0; ; tries++) {
      const one = newClient();
      watch(one);
      const take = handlers(core, one, kept, commands);
      if (!options.http) one.ws.on("INTERACTION_CREATE" as never, take.interaction as never);
      one.ws.on("MESSAGE_CREATE" as never, take.message as never);
      const ready = new Promise<void>((resolve) => one.once(Events.ClientReady, () => resolve()));
      try {
        await one.login(options.token.reveal());
        await ready;
        if (options.http) server = httpInteractions({ public_key: options.http.public_key, now, onInteraction: take.interaction });
        return one;
      } catch (error) {
        await one.destroy().catch(() => {});
        const why = hopelessLogin(error);
        if (why || stopping) throw new Error(why ?? "stopped while connecting");
        const wait_ms = LOGIN_WAITS_MS[Math.min(tries, LOGIN_WAITS_MS.length - 1)] ?? 0;
        log.warn({ why: reason(error), wait_ms }, "Discord cannot be reached; trying again");
        await new Promise((resolve) => setTimeout(resolve, wait_ms));
      }
    }
  }

  async function giveCommands(one: Client, kept: Memory, commands: Commands): Promise<void> {
    const application = one.application?.id ?? one.user?.id ?? "";
    const route = options.guild ? Routes.applicationGuildCommands(application, options.guild) : Routes.applicationCommands(application);
    try {
      const given = await register(registration(commands), kept, application, options.guild ?? "global", (body) => persist(() => one.rest.put(route, { body })));
      if (given) log.info({ scope: options.guild ?? "global" }, "commands were given to Discord");
    } catch (error) {
      log.error({ why: reason(error) }, "the commands could not be given to Discord; what was given before still works");
    }
  }

  return {
    network: NETWORK,
    counts,
    get port() {
      const at = server?.address();
      return at && typeof at === "object" ? at.port : null;
    },

    async start(core) {
      const commands = readCommands(options.knowledge);
      const kept = openMemory(options.memory, now());
      memory = kept;
      const one = await connect(core, kept, commands);
      client = one;
      if (one.ws.shards.has(0)) await giveCommands(one, kept, commands);
      const { http } = options;
      if (http) await new Promise<void>((resolve, reject) => server?.once("error", reject).listen(http.port, resolve));
    },

    async stop() {
      stopping = true;
      server?.close();
      await Promise.race([Promise.allSettled(running), new Promise((resolve) => setTimeout(resolve, 5_000))]);
      await client?.destroy();
      memory?.close();
      memory = null;
      sending = null;
    },

    async send(outgoing, reader) {
      if (!sending || !client?.isReady()) return { sent: false, retry: true, after_ms: 2_000, why: "not connected to Discord" };
      return send(sending, outgoing, reader);
    },

    async working(message) {
      if (sending && message.place.kind === "private") await sending.wire.typing(await sending.wire.direct(message.identity.id)).catch(() => {});
    },
  };
}

/** A login that no waiting mends, in a sentence for whoever set Gleed up. */
function hopelessLogin(error: unknown): string | null {
  const { code, message } = (error ?? {}) as { code?: unknown; message?: string };
  if (code === "TokenInvalid" || code === "TokenMissing" || failureOf(error) === "unauthorized") return "Discord refuses the token. Copy it anew from the developer portal (Bot, Reset Token) and set it as GLEED_DISCORD_TOKEN or in the file of GLEED_DISCORD_TOKEN_FILE.";
  if (code === "DisallowedIntents" || /disallowed intents/i.test(message ?? "")) return HOPELESS[4014] ?? null;
  if (code === "ShardingRequired" || code === "InvalidIntents") return `Discord refuses the connection: ${message ?? String(code)}.`;
  return null;
}
