/** The SDK's client on our store: its keys, its sync token, its rooms. */
import "./store/globals.ts";
import { createClient, IndexedDBStore, type MatrixClient } from "matrix-js-sdk";
import { type Logger, logger as sdkLogger } from "matrix-js-sdk/lib/logger.js";
import type { Log } from "../../src/delivery/log.ts";
import type { KeyRing } from "./crypto.ts";
import type { Credentials } from "./login.ts";
import type { Factory } from "./store/image.ts";

/** Saving costs at most one part in so many of the time: small accounts save after each sync, large ones less often and replay more. */
const SHARE = 20;

/**
 * Saves room states with the sync token that fits them. What is replayed from an older token is known to the inbox; a newer token than
 * the states would lose some.
 */
class SyncStore extends IndexedDBStore {
  #next_ms = 0;
  override wantsSave(): boolean {
    return performance.now() >= this.#next_ms;
  }
  override async save(force = false): Promise<void> {
    if (!force && !this.wantsSave()) return;
    const from_ms = performance.now();
    await super.save(true);
    const to_ms = performance.now();
    this.#next_ms = to_ms + (to_ms - from_ms > 50 ? (to_ms - from_ms) * SHARE : 0);
  }
}

export interface ClientDeps {
  readonly homeserver: string;
  readonly credentials: Credentials;
  readonly factory: Factory;
  readonly ring: KeyRing;
  readonly logger: Logger;
}

/** How long a request may take before it counts as lost. */
const REQUEST_MS = 30_000;

export async function makeClient({ homeserver, credentials, factory, ring, logger }: ClientDeps): Promise<MatrixClient> {
  // the crypto's WebAssembly finds its store by this name alone
  Object.assign(globalThis, { indexedDB: factory });
  const store = new SyncStore({ indexedDB: factory as never, dbName: `gleed-sync-${credentials.device_id}` });
  const client = createClient({
    baseUrl: homeserver,
    userId: credentials.user_id,
    deviceId: credentials.device_id,
    accessToken: credentials.token,
    store,
    cryptoCallbacks: ring,
    localTimeoutMs: REQUEST_MS,
    logger,
  });
  await store.startup();
  await client.initRustCrypto({ cryptoDatabasePrefix: `gleed-${credentials.device_id}` });
  return client;
}

/** The SDK and its crypto talk a lot; only what may matter to a host goes on, and never the words of a message. */
export function quiet(log: Log): Logger {
  // parts of the SDK that take no logger make children of this one
  Object.assign(sdkLogger, { methodFactory: () => () => {} });
  (sdkLogger as unknown as { setLevel(level: string): void }).setLevel("silent");
  const logger: Logger = {
    trace() {},
    debug() {},
    info() {},
    warn() {},
    error: (...words) => log.info({ why: words.map((word) => (word instanceof Error ? word.message : String(word))).join(" ").slice(0, 500) }, "the Matrix SDK reports an error"),
    getChild: () => logger,
  };
  return logger;
}
