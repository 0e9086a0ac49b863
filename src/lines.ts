/** `npm run -s lines`: JSON lines in and out, on the same core and store as every adapter. */
import { lines } from "../adapters/lines/index.ts";
import { startCore } from "./core/remote.ts";
import { albumIn, fileFor } from "./pictures/album.ts";
import { BadSettings, readSettings, stateFolder, type HostSettings } from "./settings.ts";

let settings: HostSettings;
try {
  settings = readSettings(process.env, ":memory:");
} catch (error) {
  console.error(error instanceof BadSettings ? error.message : String(error));
  process.exit(2);
}
const { database, knowledge, country, timezone, locale, now_ms, forecast } = settings;
let album: string | undefined;
await lines({
  input: process.stdin,
  output: process.stdout,
  reader: { locale, system: "metric", timezone },
  ...(country ? { country } : {}),
  onClosed: (why) => console.error(`The records or the knowledge cannot be opened: ${why}`),
  drawn: (picture, to) => fileFor(picture, to, (album ??= albumIn(stateFolder(process.env)))),
  startCore: (outlets) =>
    startCore(
      {
        database, settings: { timezone, locale, ...(country ? { country } : {}) }, windows_ms: {}, ticking: false,
        stands_at_ms: now_ms ?? "now", ...(knowledge ? { knowledge } : {}), ...(forecast ? { forecast } : {}),
      },
      outlets,
      { info: () => {}, warn: (data, words) => console.error(words, JSON.stringify(data)), error: (data, words) => console.error(words, JSON.stringify(data)) },
    ),
});
process.exit(0);
