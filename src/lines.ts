/** `npm run -s lines`: JSON lines in and out, on the same core and store as every adapter. */
import { join } from "node:path";
import { lines } from "../adapters/lines/index.ts";
import { endWhenNobodyReads } from "./closed-output.ts";
import { type RemoteCore, startCore } from "./core/remote.ts";
import { albumIn, fileFor } from "./pictures/album.ts";
import { keptPhotos, photosFrom, sweeping } from "./pictures/photos.ts";
import { BadSettings, readSettings, stateFolder, type HostSettings } from "./settings.ts";

endWhenNobodyReads();
let settings: HostSettings;
try {
  settings = readSettings(process.env, ":memory:");
} catch (error) {
  console.error(error instanceof BadSettings ? error.message : String(error));
  process.exit(2);
}
const { database, knowledge, country, timezone, locale, now_ms, forecast } = settings;
let album: string | undefined;
let remote: RemoteCore | undefined;
const photos = keptPhotos({
  folder: join(stateFolder(process.env), "photos"),
  draw: (picture, to) => fileFor(picture, to, (album ??= albumIn(stateFolder(process.env)))),
  fetch: photosFrom(() => remote ?? { photo: async () => null }),
});
await lines({
  input: process.stdin,
  output: process.stdout,
  reader: { locale, system: "metric", timezone },
  ...(country ? { country } : {}),
  onClosed: (why) => console.error(`The records or the knowledge cannot be opened: ${why}`),
  drawn: photos.draw,
  startCore: (outlets) => {
    remote = startCore(
      {
        database, settings: { timezone, locale, ...(country ? { country } : {}) }, windows_ms: {}, ticking: false,
        stands_at_ms: now_ms ?? "now", ...(knowledge ? { knowledge } : {}), ...(forecast ? { forecast } : {}),
      },
      outlets,
      { info: () => {}, warn: (data, words) => console.error(words, JSON.stringify(data)), error: (data, words) => console.error(words, JSON.stringify(data)) },
    );
    return { ...remote, receive: sweeping(remote.receive, photos) };
  },
});
process.exit(0);
