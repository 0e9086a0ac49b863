/** The networks a host has set up, each loaded only then: a terminal alone should not wait for a network's library. */
import { join } from "node:path";
import type { Adapter } from "../adapters/adapter.ts";
import { text } from "./answer.ts";
import type { Log } from "./delivery/log.ts";
import type { RemoteCore } from "./core/remote.ts";
import { fileFor } from "./pictures/album.ts";
import { photosFrom, withPhotos } from "./pictures/photos.ts";
import { stateFolder, type HostSettings } from "./settings.ts";
import type { Reader, Renderer } from "./text/render.ts";

export const HOPELESS = "hopeless";
/** Discord drops a message whose nonce it has seen within "the past few minutes" (its documentation); taken short. */
const DISCORD_WINDOW_MS = 120_000;

/** Exit code of "internal software error" (sysexits.h): keys in memory are ahead of the disk, so nothing may go on. */
const STORE_LOST = 70;

export interface Connections {
  readonly adapters: readonly Adapter[];
  /** how long each drops repeats of the same key */
  readonly windows_ms: Readonly<Record<string, number>>;
  /** resolves when a network will never answer again with these settings */
  readonly hopeless: Promise<typeof HOPELESS>;
}

export async function connections(settings: HostSettings, { render, reader, log, remote }: { render: Renderer; reader: Reader; log: Log; remote: () => Pick<RemoteCore, "photo"> }): Promise<Connections> {
  const state = stateFolder(process.env);
  const hopeless = Promise.withResolvers<typeof HOPELESS>();
  const adapters: Adapter[] = [];
  const draw = withPhotos((picture, to) => fileFor(picture, to, join(state, "pictures")), photosFrom(remote));
  const windows_ms: Record<string, number> = {};
  if (settings.discord) {
    const { discord, NETWORK } = await import("../adapters/discord/index.ts");
    windows_ms[NETWORK] = DISCORD_WINDOW_MS;
    adapters.push(
      discord({
        ...settings.discord,
        render, reader, log,
        memory: join(state, "discord.sqlite"),
        now: Date.now,
        draw,
        onFatal: () => hopeless.resolve(HOPELESS),
        ...(settings.knowledge ? { knowledge: settings.knowledge } : {}),
      }),
    );
  }
  if (settings.matrix) {
    const { matrix, NETWORK, WINDOW_MS } = await import("../adapters/matrix/index.ts");
    windows_ms[NETWORK] = WINDOW_MS;
    adapters.push(
      matrix({
        ...settings.matrix,
        render, reader, log,
        database: join(state, "matrix.sqlite"),
        now: Date.now,
        greeting: text("greeting"),
        draw,
        onBroken: () => process.exit(STORE_LOST),
        onFatal: () => hopeless.resolve(HOPELESS),
      }),
    );
  }
  return { adapters, windows_ms, hopeless: hopeless.promise };
}
