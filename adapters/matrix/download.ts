/** A picture that somebody sent: fetched, decrypted, and never larger than what is worth looking at. */
import { Attachment, EncryptedAttachment, initAsync } from "@matrix-org/matrix-sdk-crypto-wasm";
import type { MatrixClient } from "matrix-js-sdk";
import type { Message } from "../../src/message.ts";
import { oneLine, shorten } from "../plain.ts";

const MOST_BYTES = 8 * 1024 * 1024;
const LIMIT_MS = 15_000;

type Picture = NonNullable<Message["picture"]>;
interface ImageContent {
  readonly body?: unknown;
  readonly filename?: unknown;
  readonly url?: unknown;
  readonly file?: { readonly url?: unknown };
  readonly info?: { readonly mimetype?: unknown; readonly size?: unknown };
}

/** What kept it from coming, where it does not: too large, or neither fetched nor opened. */
export async function download(client: MatrixClient, content: ImageContent): Promise<Picture | "too-large" | "not-fetched"> {
  const { file, info } = content;
  const from = file?.url ?? content.url;
  if (typeof from !== "string") return "not-fetched";
  if (Number(info?.size ?? 0) > MOST_BYTES) return "too-large";
  const url = client.mxcUrlToHttp(from, undefined, undefined, undefined, false, true, true);
  if (!url) return "not-fetched";
  try {
    const response = await fetch(url, { headers: { authorization: `Bearer ${client.getAccessToken()}` }, signal: AbortSignal.timeout(LIMIT_MS) });
    if (!response.ok) return "not-fetched";
    if (Number(response.headers.get("content-length") ?? 0) > MOST_BYTES) return "too-large";
    const raw = new Uint8Array(await response.arrayBuffer());
    if (raw.length > MOST_BYTES) return "too-large";
    const bytes = file ? await opened(raw, file) : raw;
    const name = [content.filename, content.body].find((one) => typeof one === "string") as string | undefined;
    return { name: shorten(oneLine(name ?? ""), 100), media_type: typeof info?.mimetype === "string" ? info.mimetype : "application/octet-stream", bytes };
  } catch {
    return "not-fetched";
  }
}

async function opened(raw: Uint8Array, file: object): Promise<Uint8Array> {
  await initAsync();
  return Attachment.decrypt(new EncryptedAttachment(raw, JSON.stringify(file)));
}
