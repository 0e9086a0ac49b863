/** A picture somebody attached, from Discord's own hosts only, and never larger than what is worth looking at. */
import type { APIAttachment } from "discord.js";
import type { Message } from "../../src/message.ts";

const MOST_BYTES = 8 * 1024 * 1024;
const LIMIT_MS = 4_000;
const TOO_LARGE = { picture_missing: "too-large" } as const;
const NOT_FETCHED = { picture_missing: "not-fetched" } as const;

/** What goes into the message: the picture, or what kept it from coming (too large; elsewhere, or it does not come). */
export async function fetchPicture(attachment: APIAttachment, hosts: ReadonlySet<string>): Promise<Pick<Message, "picture" | "picture_missing">> {
  try {
    const url = new URL(attachment.url);
    if (!hosts.has(url.host)) return NOT_FETCHED;
    if (attachment.size > MOST_BYTES) return TOO_LARGE;
    const response = await fetch(url, { signal: AbortSignal.timeout(LIMIT_MS), redirect: "error" });
    if (!response.ok) return NOT_FETCHED;
    if (Number(response.headers.get("content-length") ?? 0) > MOST_BYTES) return TOO_LARGE;
    const bytes = new Uint8Array(await response.arrayBuffer());
    return bytes.length > MOST_BYTES ? TOO_LARGE : { picture: { name: attachment.filename, media_type: attachment.content_type ?? "application/octet-stream", bytes } };
  } catch {
    return NOT_FETCHED;
  }
}
