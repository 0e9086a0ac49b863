/** An echo on the bare SDK, crypto in memory: what everything else is measured beside. Run with node. */
import "fake-indexeddb/auto";
import { ClientEvent, createClient, EventType, MatrixEventEvent, type MatrixEvent, RoomEvent, SyncState } from "matrix-js-sdk";
import type { Logger } from "matrix-js-sdk/lib/logger.js";

const [base = "", user_id = "", device_id = "", token = ""] = process.argv.slice(2);
const silent: Logger = { trace() {}, debug() {}, info() {}, warn() {}, error() {}, getChild: () => silent };
const out = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);
const client = createClient({ baseUrl: base, userId: user_id, deviceId: device_id, accessToken: token, logger: silent });
await client.initRustCrypto({ useIndexedDB: false });
const answer = (event: MatrixEvent): void => {
  const { to, body } = event.getContent<{ to?: string; body?: string }>();
  if (to !== user_id || event.getSender() === user_id) return;
  void client.sendEvent(event.getRoomId() ?? "", EventType.RoomMessage, { msgtype: "m.notice", body: `echo ${body}` } as never);
  out({ rss_MB: Math.round(process.memoryUsage().rss / 1e6) });
};
client.on(RoomEvent.Timeline, async (event) => {
  await client.decryptEventIfNeeded(event);
  if (event.isDecryptionFailure()) event.once(MatrixEventEvent.Decrypted, answer);
  else answer(event);
});
client.once(ClientEvent.Sync, function first(state: SyncState) {
  if (state !== SyncState.Prepared) return void client.once(ClientEvent.Sync, first);
  out({ ready: true, rss_MB: Math.round(process.memoryUsage().rss / 1e6) });
});
await client.startClient({ lazyLoadMembers: true });
