/**
 * A stand-in for Discord on this machine, gateway and REST, for the real client to talk to. Written from the public documentation; it
 * knows no permissions but those it is told are missing, so that passing here is no proof against the platform itself.
 */
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { description } from "./description.ts";
import { BOT, guild, ids, type Json } from "./events.ts";
import { gateway, type Gateway } from "./gateway.ts";
import { rest, type Rest, type Tracked } from "./rest.ts";

export interface StandIn extends Rest {
  readonly api: string;
  readonly gateway: Gateway;
  token: string;
  refuse: number | null;
  /** hand an interaction to the bot; `null` when no session lives to take it */
  interact(interaction: Json): Tracked | null;
  close(): Promise<void>;
}

export interface StandInOptions {
  readonly shards?: number;
  readonly heartbeat_ms?: number;
  readonly guilds?: readonly string[];
  readonly token_ms?: number;
  /** leave out every check of requests, which costs time */
  readonly unchecked?: boolean;
}

export const TOKEN = `${Buffer.from(ids.bot).toString("base64url")}.aaaaaa.bbbbbbbbbbbbbbbbbbbbbbbbbbb`;

export async function standIn(options: StandInOptions = {}): Promise<StandIn> {
  const server = createServer((request, response) => api.handle(request, response));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  const url = `ws://127.0.0.1:${port}`;
  const known = options.guilds ?? [ids.guild, ids.other_guild];
  const settings = { token: TOKEN, refuse: null as number | null };
  const api = rest({ check: options.unchecked ? null : description(), token: () => settings.token, gateway: () => url, shards: options.shards ?? 1, token_ms: options.token_ms ?? 15 * 60_000 });
  const mine = (id: string, [shard, of]: readonly [number, number]): boolean => (BigInt(id) >> 22n) % BigInt(of) === BigInt(shard);
  const ws = gateway({
    server, token: TOKEN, url: () => url, ...(options.heartbeat_ms ? { heartbeat_ms: options.heartbeat_ms } : {}),
    refuse: () => settings.refuse,
    ready: ({ shard }) => ({ user: BOT, application: { id: ids.app, flags: 0 }, guilds: known.filter((id) => mine(id, shard)).map((id) => ({ id, unavailable: true })) }),
    guilds: ({ shard }) => known.filter((id) => mine(id, shard)).map(guild),
  });
  const own = {
    api: `http://127.0.0.1:${port}/api`,
    gateway: ws,
    interact(interaction: Json): Tracked | null {
      interaction.token ??= `token-${interaction.id}`;
      const one = api.track(interaction);
      return ws.dispatch("INTERACTION_CREATE", interaction) ? one : null;
    },
    async close(): Promise<void> {
      ws.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
  Object.defineProperties(own, {
    token: { get: () => settings.token, set: (token: string) => (settings.token = token) },
    refuse: { get: () => settings.refuse, set: (code: number | null) => (settings.refuse = code) },
    fault: { get: () => api.fault, set: (fault: Rest["fault"]) => (api.fault = fault) },
  });
  return Object.assign(own, { requests: api.requests, problems: api.problems, tracked: api.tracked, messages: api.messages, commands: api.commands, closedDirect: api.closedDirect, closedChannels: api.closedChannels, track: api.track, forget: api.forget, handle: api.handle }) as StandIn;
}

/** Wait until something is so. @throws with `what` when it is not within the limit */
export async function until<T>(what: string, look: () => T | null | undefined | false, limit_ms = 5_000): Promise<T> {
  const from = performance.now();
  for (;;) {
    const found = look();
    if (found) return found;
    if (performance.now() - from > limit_ms) throw new Error(`${what} did not happen within ${limit_ms} ms`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
