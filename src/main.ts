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
import { endWhenNobodyReads } from "./closed-output.ts";
import { connections, HOPELESS } from "./connections.ts";
import { type RemoteCore, startCore } from "./core/remote.ts";
import type { Log } from "./delivery/log.ts";
import { front } from "./front.ts";
import { listen, metrics } from "./hosting/http.ts";
import { hostLog } from "./hosting/log.ts";
import { measured } from "./hosting/measured.ts";
import { albumIn, fileFor } from "./pictures/album.ts";
import { keptPhotos, photosFrom, sweeping } from "./pictures/photos.ts";
import { BadSettings, readSettings, stateFolder, type HostSettings } from "./settings.ts";
import { renderer, type Reader, type Renderer } from "./text/render.ts";

endWhenNobodyReads();
const RECORDS_MS = 10_000;
const READY_MS = 2_000;

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
const isService = settings.discord !== undefined || settings.matrix !== undefined;
/** Whoever sits at a terminal wants the talk; whoever runs a service wants to know. */
const watch = metrics();
const log: Log = watch.logged(hostLog(isService ? settings.log : "error"));

let render: Renderer = renderer(new Map());
const shown: Renderer = (words, to) => render(words, to);

const { database, country, knowledge, forecast } = settings;
/** Beside a network, the terminal is there for whoever sits at it, not for a service without input. */
const talksHere = !isService || process.stdin.isTTY === true;
let album: string | undefined;
const photos = keptPhotos({
  folder: join(stateFolder(process.env), "photos"),
  draw: (picture, to) => fileFor(picture, to, (album ??= albumIn(stateFolder(process.env)))),
  fetch: photosFrom((): RemoteCore => remote),
});
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
  draw: photos.draw,
  ...(settings.history ? { history: join(stateFolder(process.env), "history") } : {}),
  onError: (error) => log.error({ why: String(error) }, "a message could not be answered"),
});

const networks = await connections(settings, { render: shown, reader, log, remote: (): RemoteCore => remote });
const adapters: readonly Adapter[] = [...(talksHere ? [here] : []), ...networks.adapters];
const remote = startCore(
  {
    database, windows_ms: { terminal: 0, ...networks.windows_ms }, ticking: true, ...(knowledge ? { knowledge } : {}), ...(forecast ? { forecast } : {}),
    settings: { timezone, locale: settings.locale, ...(country ? { country } : {}) },
    ...(settings.now_ms === undefined ? {} : { stands_at_ms: settings.now_ms }),
  },
  adapters.map(watch.counted),
  log,
);
const core = measured(front({ remote: { ...remote, receive: sweeping(remote.receive, photos) }, reader, ...(country ? { country } : {}), limit_ms: RECORDS_MS }), watch);
const http = settings.http_port === undefined ? null : await listen(settings.http_port, { ready: () => remote.answers(READY_MS) }, watch).catch((error) => {
  log.error({ why: String(error), port: settings.http_port }, "the port for health and metrics cannot be opened");
  return null;
});

try {
  render = renderer(await remote.ready(RECORDS_MS));
} catch (error) {
  console.error(`The records or the knowledge cannot be read (${error instanceof Error ? error.message : String(error)}). Emergencies are answered all the same.`);
}
const told = new Promise<string>((resolve) => {
  for (const signal of ["SIGINT", "SIGTERM"] as const) if (networks.adapters.length > 0 || signal === "SIGTERM") process.once(signal, () => resolve(signal));
});
try {
  if (talksHere) await here.start(core);
  // a network that cannot be reached yet keeps nobody from leaving
  await Promise.race([Promise.all(networks.adapters.map((adapter) => adapter.start(core))), told, ...(talksHere ? [here.ended] : [])]);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  if (!talksHere) process.exit(1);
}
const ended = await Promise.race([...(talksHere ? [here.ended] : []), told, ...(talksHere ? [] : [networks.hopeless])]);
await Promise.all(adapters.map((adapter) => adapter.stop()));
await remote.close(3_000);
await http?.close();
process.exit(ended === HOPELESS ? 1 : 0);
