/** A picture somebody attached, from Discord's own hosts only, and never larger than what is worth looking at. */
import type { APIAttachment } from "discord.js";
import type { Message } from "../../src/message.ts";

const MOST_BYTES = 8 * 1024 * 1024;
const LIMIT_MS = 4_000;

/** Null when it is too large, elsewhere, or does not come. */
export async function fetchPicture(attachment: APIAttachment, hosts: ReadonlySet<string>): Promise<NonNullable<Message["picture"]> | null> {
  try {
    const url = new URL(attachment.url);
    if (!hosts.has(url.host) || attachment.size > MOST_BYTES) return null;
    const response = await fetch(url, { signal: AbortSignal.timeout(LIMIT_MS), redirect: "error" });
    if (!response.ok || Number(response.headers.get("content-length") ?? 0) > MOST_BYTES) return null;
    const bytes = new Uint8Array(await response.arrayBuffer());
    return bytes.length > MOST_BYTES ? null : { name: attachment.filename, media_type: attachment.content_type ?? "application/octet-stream", bytes };
  } catch {
    return null;
  }
}
