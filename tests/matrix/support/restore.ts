/** A new device of Gleed's account with nothing but the recovery key: how much of a room's past can it read? Run with node. */
import { join } from "node:path";
import { ClientEvent, MatrixEvent, Method, SyncState } from "matrix-js-sdk";
import { makeClient, quiet } from "../../../adapters/matrix/client.ts";
import { keyRing, restoreKeys, setUpKeys } from "../../../adapters/matrix/crypto.ts";
import { login } from "../../../adapters/matrix/login.ts";
import { openFile } from "../../../adapters/matrix/store/file.ts";
import { openImage } from "../../../adapters/matrix/store/image.ts";
import { rows } from "../../../adapters/matrix/store/rows.ts";
import { silent } from "../../../src/delivery/log.ts";
import { Secret } from "../../../src/settings.ts";

const [homeserver = "", user = "", words = "", folder = "", recovery_key_file = "", room_id = ""] = process.argv.slice(2);
const password = new Secret(words);
const file = openFile(join(folder, "matrix.sqlite"));
const factory = await openImage(file, () => process.exit(70));
const credentials = await login({ homeserver, user, password }, rows(file), quiet(silent));
const ring = keyRing();
const client = await makeClient({ homeserver, credentials, factory, ring, logger: quiet(silent) });
const synced = new Promise<void>((resolve) => client.on(ClientEvent.Sync, (state) => state === SyncState.Syncing && resolve()));
await client.startClient();
await synced;
await setUpKeys(client, ring, { recovery_key_file, password, log: silent });
const { found, restored } = await restoreKeys(client);
const { chunk } = await client.http.authedRequest<{ chunk: object[] }>(Method.Get, `/rooms/${encodeURIComponent(room_id)}/messages`, { dir: "b", limit: "100" });
let read = 0;
let encrypted = 0;
for (const raw of chunk) {
  const event = new MatrixEvent({ ...raw, room_id } as never);
  if (!event.isEncrypted()) continue;
  encrypted += 1;
  await client.decryptEventIfNeeded(event);
  if (!event.isDecryptionFailure()) read += 1;
}
process.stdout.write(`${JSON.stringify({ device: credentials.device_id, found, restored, encrypted, read, signed: await client.getCrypto()?.isCrossSigningReady() })}\n`);
process.exit(0);
