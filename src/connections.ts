/** The networks a host has set up, each loaded only then: a terminal alone should not wait for a network's library. */
import { join } from "node:path";
import type { Adapter } from "../adapters/adapter.ts";
import type { Log } from "./delivery/log.ts";
import { fileFor } from "./pictures/album.ts";
import { stateFolder, type HostSettings } from "./settings.ts";
import type { Reader, Renderer } from "./text/render.ts";

export const HOPELESS = "hopeless";
/** Discord drops a message whose nonce it has seen within "the past few minutes" (its documentation); taken short. */
const DISCORD_WINDOW_MS = 120_000;

export interface Connections {
  readonly adapters: readonly Adapter[];
  /** how long each drops repeats of the same key */
  readonly windows_ms: Readonly<Record<string, number>>;
  /** resolves when a network will never answer again with these settings */
  readonly hopeless: Promise<typeof HOPELESS>;
}

export async function connections(settings: HostSettings, { render, reader, log }: { render: Renderer; reader: Reader; log: Log }): Promise<Connections> {
  const state = stateFolder(process.env);
  const hopeless = Promise.withResolvers<typeof HOPELESS>();
  const adapters: Adapter[] = [];
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
        draw: (picture, to) => fileFor(picture, to, join(state, "pictures")),
        onFatal: () => hopeless.resolve(HOPELESS),
        ...(settings.knowledge ? { knowledge: settings.knowledge } : {}),
      }),
    );
  }
  return { adapters, windows_ms, hopeless: hopeless.promise };
}
