/** Somebody who writes to Gleed: the SDK with encryption, in a process of its own, driven by lines of JSON. Run with node, not imported. */
import { createInterface } from "node:readline";
import "fake-indexeddb/auto";
import { Attachment, EncryptedAttachment } from "@matrix-org/matrix-sdk-crypto-wasm";
import { ClientEvent, createClient, EventType, type MatrixEvent, MatrixEventEvent, type Room, RoomEvent, SyncState } from "matrix-js-sdk";
import type { Logger } from "matrix-js-sdk/lib/logger.js";

const [base = "", user_id = "", device_id = "", token = ""] = process.argv.slice(2);
const silent: Logger = { trace() {}, debug() {}, info() {}, warn() {}, error() {}, getChild: () => silent };
const out = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);

const client = createClient({ baseUrl: base, userId: user_id, deviceId: device_id, accessToken: token, logger: silent });
await client.initRustCrypto({ useIndexedDB: false });

const tell = (event: MatrixEvent, room: Room | undefined): void => {
  if (event.getSender() === user_id || !room) return;
  out({
    event: event.getId(), room: room.roomId, sender: event.getSender(), type: event.getType(), encrypted: event.isEncrypted(),
    failure: event.isDecryptionFailure() ? (event.decryptionFailureReason ?? "yes") : null, content: event.getContent(), relates: event.getWireContent()["m.relates_to"] ?? null,
    at_ms: Date.now(),
  });
};
client.on(RoomEvent.Timeline, async (event, room, toStart) => {
  if (toStart) return;
  await client.decryptEventIfNeeded(event);
  if (event.isDecryptionFailure()) event.once(MatrixEventEvent.Decrypted, () => tell(event, room));
  tell(event, room);
});
client.on(RoomEvent.MyMembership, (room, membership) => out({ membership, room: room.roomId }));
client.once(ClientEvent.Sync, async function first(state: SyncState) {
  if (state !== SyncState.Prepared) return void client.once(ClientEvent.Sync, first);
  out({ ready: true });
});
await client.startClient({ lazyLoadMembers: true });

const encryption = { type: "m.room.encryption", state_key: "", content: { algorithm: "m.megolm.v1.aes-sha2" } };
const commands: Record<string, (command: any) => Promise<unknown>> = {
  create: async ({ invite, encrypted, rotate, name }) =>
    (await client.createRoom({
      invite, ...(name ? { name } : {}), preset: "private_chat" as never, is_direct: true,
      initial_state: encrypted === false ? [] : [rotate ? { ...encryption, content: { ...(encryption.content as object), rotation_period_msgs: rotate } } : encryption],
    })).room_id,
  invite: async ({ room, who }) => client.invite(room, who),
  join: async ({ room }) => (await client.joinRoom(room)).roomId,
  send: async ({ room, content, thread }) => (await client.sendEvent(room, thread ?? null, EventType.RoomMessage, content)).event_id,
  raw: async ({ room, type, content }) => (await client.sendEvent(room, type, content)).event_id,
  state: async ({ room, type, content, key }) => client.sendStateEvent(room, type, content, key),
  react: async ({ room, event, key }) => (await client.sendEvent(room, EventType.Reaction, { "m.relates_to": { rel_type: "m.annotation" as never, event_id: event, key } })).event_id,
  leave: async ({ room }) => client.leave(room),
  members: async ({ room }) => Object.keys((await client.getJoinedRoomMembers(room)).joined),
  shield: async ({ room, event }) => client.getCrypto()?.getEncryptionInfoForEvent(client.getRoom(room)?.findEventById(event) as MatrixEvent),
  picture: async ({ room, caption }) => {
    const sealed = Attachment.encrypt(Buffer.from("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==", "base64"));
    const how = JSON.parse(sealed.mediaEncryptionInfo ?? "{}") as object;
    const { content_uri } = await client.uploadContent(new Blob([new Uint8Array(sealed.encryptedData)]), { type: "application/octet-stream" });
    const content = { msgtype: "m.image", body: caption ?? "dot.png", filename: "dot.png", info: { mimetype: "image/png" }, file: { ...how, url: content_uri } };
    return (await client.sendEvent(room, EventType.RoomMessage, content as never)).event_id;
  },
  fetch: async ({ file }) => {
    const { url } = file as { url: string };
    const response = await fetch(client.mxcUrlToHttp(url, undefined, undefined, undefined, false, true, true) ?? "", { headers: { authorization: `Bearer ${token}` } });
    const bytes = Attachment.decrypt(new EncryptedAttachment(new Uint8Array(await response.arrayBuffer()), JSON.stringify(file)));
    return { size: bytes.length, start: Buffer.from(bytes.slice(0, 8)).toString("latin1") };
  },
};
createInterface({ input: process.stdin }).on("line", async (line) => {
  const command = JSON.parse(line) as { id: number; do: string };
  try {
    out({ answer: command.id, value: await commands[command.do]?.(command) });
  } catch (error) {
    out({ answer: command.id, error: String(error) });
  }
});
process.stdin.on("close", () => process.exit(0));
