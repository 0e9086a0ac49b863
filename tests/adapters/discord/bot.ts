/** The real adapter with the real client against the stand-in, before a whole Gleed in memory or a core made up by the test. */
import { discord, type DiscordAdapter, type DiscordOptions } from "../../../adapters/discord/index.ts";
import type { Core } from "../../../adapters/adapter.ts";
import { openCore } from "../../../src/core/core.ts";
import type { Log } from "../../../src/delivery/log.ts";
import { front } from "../../../src/front.ts";
import { Secret } from "../../../src/settings.ts";
import { renderer, type Reader, type Renderer } from "../../../src/text/render.ts";
import { type StandIn, standIn, type StandInOptions, TOKEN, until } from "../../servers/discord/index.ts";
import type { Json } from "../../servers/discord/events.ts";
import type { Tracked } from "../../servers/discord/rest.ts";
import { readMessages } from "./reader.ts";

export interface Bot {
  readonly server: StandIn;
  readonly adapter: DiscordAdapter;
  readonly logged: { readonly level: string; readonly data: Readonly<Record<string, unknown>>; readonly words: string }[];
  readonly fatal: string[];
  /** dispatch and wait for the answer */
  ask(interaction: Json): Promise<Tracked>;
  /** dispatch a message and wait for what is posted to its channel */
  say(message: Json): Promise<Json[]>;
  /** put records of somebody in, as an import would */
  records(user: string, records: Record<string, unknown>): Promise<void>;
  advance(duration: string): Promise<void>;
  close(): Promise<void>;
}

const reader: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };

export interface BotOptions {
  readonly server?: StandIn;
  readonly standIn?: StandInOptions;
  readonly core?: (real: Core) => Core;
  readonly discord?: Partial<DiscordOptions>;
  readonly database?: string;
}

export async function startBot(options: BotOptions = {}): Promise<Bot> {
  const server = options.server ?? (await standIn(options.standIn));
  const logged: Bot["logged"] = [];
  const log: Log = { info: (data, words) => logged.push({ level: "info", data, words }), warn: (data, words) => logged.push({ level: "warn", data, words }), error: (data, words) => logged.push({ level: "error", data, words }) };
  const fatal: string[] = [];
  let render: Renderer = renderer(new Map());
  const adapter = discord({
    token: new Secret(TOKEN), render: (text, to) => render(text, to), reader, log, memory: ":memory:", now: Date.now, onFatal: (why) => fatal.push(why), api: server.api, waitGuildTimeout: 300, ...options.discord,
  });
  const core = await openCore({ database: options.database ?? ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: { discord: 120_000 }, outlets: [adapter], log, ticking: false, stands_at_ms: Date.parse("2026-11-25T18:00:00Z") });
  render = renderer(core.texts);
  const real = front({ remote: core, reader, limit_ms: 0 });
  await adapter.start(options.core ? options.core(real) : real);
  return {
    server, adapter, logged, fatal,
    async ask(interaction) {
      const one = server.interact(interaction);
      if (!one) throw new Error("no session to take an interaction");
      await until(`the answer to ${interaction.data.name ?? interaction.data.custom_id}`, () => one.answered_ms !== null);
      return one;
    },
    async say(message) {
      const before = new Set(server.messages.keys());
      server.gateway.dispatch("MESSAGE_CREATE", message);
      const posted = (): Json[] => [...server.messages.values()].filter((one) => !before.has(one.id) && one.message_reference?.message_id === message.id);
      await until(`an answer to "${message.content}"`, () => posted().length > 0);
      return posted();
    },
    async records(user, records) {
      await core.receive({ adapter: "test", native_id: `records-${user}`, identity: { network: "discord", id: user }, place: { network: "discord", id: `@${user}`, kind: "private", encrypted: null }, received_at_ms: core.now(), records });
    },
    async advance(duration) {
      await core.advance(Temporal.Duration.from(duration).total({ unit: "milliseconds" }));
    },
    async close() {
      await adapter.stop();
      await core.close();
      if (!options.server) await server.close();
    },
  };
}

/** What a reader sees of a message. */
export const words = (message: Json | null): string => readMessages([{ payload: message as never, files: [] }]).text;

export const components = (message: Json | null): Json[] => {
  const inner = (list: Json[]): Json[] => list.flatMap((one) => [one, ...inner(one.components ?? [])]);
  return inner(message?.components ?? []);
};
export const button = (message: Json | null, label: string | RegExp): Json => {
  const found = components(message).find((one) => one.type === 2 && (typeof label === "string" ? one.label === label : label.test(one.label)));
  if (!found) throw new Error(`no button "${label}" among ${components(message).filter((one) => one.type === 2).map((one) => one.label)}`);
  return found;
};
