/**
 * Gleed starts here: the adapter and its emergency answers first, then settings, records and clock in their own thread.
 * Whatever hangs over there, danger is answered from here.
 */
import { randomUUID } from "node:crypto";
import { userInfo } from "node:os";
import { join } from "node:path";
import type { Core, Reply } from "../adapters/adapter.ts";
import { terminal } from "../adapters/terminal/index.ts";
import { text } from "./answer.ts";
import { emergencyIn } from "./conversation/emergency.ts";
import { startCore } from "./core/remote.ts";
import { readerOf } from "./delivery/reader.ts";
import type { Log } from "./delivery/log.ts";
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
const log: Log = {
  info: () => {},
  warn: () => {},
  error: (data, words) => console.error(words, JSON.stringify(data)),
};

let render: Renderer = renderer(new Map());
const known = { country: settings.country as string | undefined, locale: settings.locale };

const core: Core = {
  emergency(message): Reply | null {
    const answer = emergencyIn(message.text, { country: known.country, fallback_country: settings.country, language: known.locale.slice(0, 2) });
    return answer ? { answer, reader } : null;
  },
  async receive(message): Promise<Reply> {
    const { answer, facts } = await remote.receive(message, RECORDS_MS);
    known.country = facts.country ?? known.country;
    known.locale = facts.locale ?? known.locale;
    return { answer, reader: readerOf(facts, reader) };
  },
};

const adapter = terminal({
  stdin: process.stdin,
  stdout: process.stdout,
  render: (words, to) => render(words, to),
  reader,
  person: { id: userInfo().username, name: userInfo().username },
  session: randomUUID(),
  now: Date.now,
  greeting: text("greeting"),
  documents: join(stateFolder(process.env), "documents"),
  ...(settings.history ? { history: join(stateFolder(process.env), "history") } : {}),
  onError: (error) => log.error({ why: String(error) }, "a message could not be answered"),
});

const { database, country, knowledge } = settings;
const remote = startCore(
  {
    database, windows_ms: { terminal: 0 }, ticking: true, ...(knowledge ? { knowledge } : {}),
    settings: { timezone, locale: settings.locale, ...(country ? { country } : {}) },
    ...(settings.now_ms === undefined ? {} : { stands_at_ms: settings.now_ms }),
  },
  [adapter],
  log,
);

try {
  render = renderer(await remote.ready(RECORDS_MS));
} catch (error) {
  console.error(`The records or the knowledge cannot be read (${error instanceof Error ? error.message : String(error)}). Emergencies are answered all the same.`);
}
await adapter.start(core);
await adapter.ended;
await adapter.stop();
await remote.close(3_000);
process.exit(0);
