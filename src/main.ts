/**
 * Gleed starts here: the adapter and its emergency answers first, then settings, records and clock in their own thread.
 * Whatever hangs over there, danger is answered from here.
 */
import { randomUUID } from "node:crypto";
import { userInfo } from "node:os";
import { join } from "node:path";
import type { Adapter } from "../adapters/adapter.ts";
import { terminal } from "../adapters/terminal/index.ts";
import { text } from "./answer.ts";
import { connections, HOPELESS } from "./connections.ts";
import { startCore } from "./core/remote.ts";
import type { Log } from "./delivery/log.ts";
import { front } from "./front.ts";
import { BadSettings, readSettings, stateFolder, type HostSettings } from "./settings.ts";
import { renderer, type Reader, type Renderer } from "./text/render.ts";

const RECORDS_MS = 10_000;

function settingsOrEnd(): HostSettings {
  try {
    return readSettings(process.env, join(stateFolder(process.env), "gleed.sqlite"));
  } catch (error) {
    console.error(error instanceof BadSettings ? error.message : String(error));
    process.exit(2);
  }
}

const settings = settingsOrEnd();
const timezone = process.env.GLEED_TIMEZONE ? settings.timezone : Intl.DateTimeFormat().resolvedOptions().timeZone;
const reader: Reader = { locale: settings.locale, system: "metric", timezone };
const print = (data: unknown, words: string): void => console.error(words, JSON.stringify(data));
/** Whoever sits at a terminal wants the talk; whoever runs a service wants to know. */
const log: Log = settings.discord ? { info: print, warn: print, error: print } : { info: () => {}, warn: () => {}, error: print };

let render: Renderer = renderer(new Map());
const shown: Renderer = (words, to) => render(words, to);

const { database, country, knowledge } = settings;
/** Beside a network, the terminal is there for whoever sits at it, not for a service without input. */
const talksHere = settings.discord === undefined || process.stdin.isTTY === true;
const here = terminal({
  stdin: process.stdin,
  stdout: process.stdout,
  render: shown,
  reader,
  person: { id: userInfo().username, name: userInfo().username },
  session: randomUUID(),
  now: Date.now,
  greeting: text("greeting"),
  documents: join(stateFolder(process.env), "documents"),
  ...(settings.history ? { history: join(stateFolder(process.env), "history") } : {}),
  onError: (error) => log.error({ why: String(error) }, "a message could not be answered"),
});

const networks = await connections(settings, { render: shown, reader, log });
const adapters: readonly Adapter[] = [...(talksHere ? [here] : []), ...networks.adapters];
const remote = startCore(
  {
    database, windows_ms: { terminal: 0, ...networks.windows_ms }, ticking: true, ...(knowledge ? { knowledge } : {}),
    settings: { timezone, locale: settings.locale, ...(country ? { country } : {}) },
    ...(settings.now_ms === undefined ? {} : { stands_at_ms: settings.now_ms }),
  },
  adapters,
  log,
);
const core = front({ remote, reader, ...(country ? { country } : {}), limit_ms: RECORDS_MS });

try {
  render = renderer(await remote.ready(RECORDS_MS));
} catch (error) {
  console.error(`The records or the knowledge cannot be read (${error instanceof Error ? error.message : String(error)}). Emergencies are answered all the same.`);
}
const told = new Promise<string>((resolve) => {
  for (const signal of ["SIGINT", "SIGTERM"] as const) if (networks.adapters.length > 0) process.once(signal, () => resolve(signal));
});
try {
  if (talksHere) await here.start(core);
  await Promise.all(networks.adapters.map((adapter) => adapter.start(core)));
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  if (!talksHere) process.exit(1);
}
const ended = await Promise.race([...(talksHere ? [here.ended] : []), told, ...(talksHere ? [] : [networks.hopeless])]);
await Promise.all(adapters.map((adapter) => adapter.stop()));
await remote.close(3_000);
process.exit(ended === HOPELESS ? 1 : 0);
