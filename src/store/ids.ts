/** Ids made of what they stand for: the same event makes the same rows, whichever process works it. */
import { createHash } from "node:crypto";

function made(kind: string, ...parts: readonly string[]): string {
  const hash = createHash("sha256").update(JSON.stringify(parts));
  return `${kind}-${hash.digest("base64url").slice(0, 20)}`;
}

export const personId = (network: string, network_id: string): string => made("person", network, network_id);
export const placeId = (network: string, network_id: string): string => made("place", network, network_id);
