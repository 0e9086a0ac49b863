/** Pictures and documents: encrypted before they are uploaded where the room is, so that the homeserver keeps what it cannot read. */
import { readFile } from "node:fs/promises";
import { extname } from "node:path";
import { Attachment, initAsync } from "@matrix-org/matrix-sdk-crypto-wasm";
import type { MatrixClient } from "matrix-js-sdk";
import type { Photo } from "../../src/answer.ts";
import type { Event } from "./api.ts";

const TYPES: Readonly<Record<string, string>> = { ".png": "image/png", ".svg": "image/svg+xml", ".jpg": "image/jpeg" };
/** where a PNG says how wide and high it is */
const PNG_SIZE = 16;

/** The content of the event that shows it. */
export async function upload(client: MatrixClient, event: Exclude<Event, { kind: "notice" }>, isEncrypted: boolean): Promise<object> {
  const bytes = event.kind === "file" ? Buffer.from(event.bytes) : typeof event.from === "string" ? await readFile(event.from) : Buffer.from(event.from.bytes);
  const info = event.kind === "image" ? { mimetype: typeOf(event.from), size: bytes.length, ...sizeOf(bytes) } : event.content.info;
  if (!isEncrypted) {
    const { content_uri } = await client.uploadContent(new Blob([bytes]), { type: info.mimetype, name: event.content.filename });
    return { ...event.content, info, url: content_uri };
  }
  await initAsync();
  const sealed = Attachment.encrypt(bytes);
  const how = JSON.parse(sealed.mediaEncryptionInfo ?? "{}") as object;
  const { content_uri } = await client.uploadContent(new Blob([new Uint8Array(sealed.encryptedData)]), {
    type: "application/octet-stream",
    includeFilename: false,
  });
  return { ...event.content, info, file: { ...how, url: content_uri } };
}

const typeOf = (from: string | Photo): string => (typeof from === "string" ? (TYPES[extname(from)] ?? "application/octet-stream") : from.media_type);

const sizeOf = (bytes: Buffer): { w: number; h: number } | Record<string, never> =>
  bytes.length > PNG_SIZE + 8 && bytes.toString("latin1", 1, 4) === "PNG"
    ? { w: bytes.readUInt32BE(PNG_SIZE), h: bytes.readUInt32BE(PNG_SIZE + 4) }
    : {};
