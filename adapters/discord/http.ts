/** Interactions by HTTP instead of the gateway: each request signed by Discord with Ed25519, checked before anything is read. */
import { createPublicKey, type KeyObject, verify } from "node:crypto";
import { createServer, type Server } from "node:http";
import type { APIInteraction } from "discord.js";

const MOST_BYTES = 1_000_000;
/** Older requests are refused, so that a recorded one cannot be played again later. Common practice; the platform asks for the signature only. */
const FRESH_S = 300;

export interface HttpOptions {
  /** hexadecimal, as the developer portal shows it */
  readonly public_key: string;
  readonly now: () => number;
  readonly onInteraction: (interaction: APIInteraction) => void;
}

/** @throws when the key is not 32 bytes in hexadecimal */
export function publicKey(hex: string): KeyObject {
  if (!/^[0-9a-f]{64}$/i.test(hex)) throw new Error("the public key of the application is 64 hexadecimal digits");
  return createPublicKey({ key: { kty: "OKP", crv: "Ed25519", x: Buffer.from(hex, "hex").toString("base64url") }, format: "jwk" });
}

export function isSigned(key: KeyObject, signature: string | undefined, timestamp: string | undefined, body: Buffer, now_ms: number): boolean {
  if (!signature || !timestamp || !/^[0-9a-f]{128}$/i.test(signature) || !/^\d{1,12}$/.test(timestamp)) return false;
  if (Math.abs(now_ms / 1000 - Number(timestamp)) > FRESH_S) return false;
  return verify(null, Buffer.concat([Buffer.from(timestamp), body]), key, Buffer.from(signature, "hex"));
}

/** A server to put behind TLS. The answer to an interaction goes by its own request, so a press is acknowledged the same way as over the gateway. */
export function httpInteractions({ public_key, now, onInteraction }: HttpOptions): Server {
  const key = publicKey(public_key);
  return createServer((request, response) => {
    const end = (status: number, body?: unknown): void => void response.writeHead(status, body === undefined ? {} : { "content-type": "application/json" }).end(body === undefined ? undefined : JSON.stringify(body));
    if (request.method !== "POST") return end(405);
    const parts: Buffer[] = [];
    let size = 0;
    request.on("error", () => {});
    request.on("data", (part: Buffer) => {
      size += part.length;
      if (size > MOST_BYTES) request.destroy();
      else parts.push(part);
    });
    request.on("end", () => {
      const body = Buffer.concat(parts);
      const header = (name: string): string | undefined => [request.headers[name]].flat()[0];
      if (!isSigned(key, header("x-signature-ed25519"), header("x-signature-timestamp"), body, now())) return end(401);
      let interaction: APIInteraction;
      try {
        interaction = JSON.parse(body.toString("utf8")) as APIInteraction;
      } catch {
        return end(400);
      }
      if (interaction.type === 1) return end(200, { type: 1 });
      end(202);
      onInteraction(interaction);
    });
  });
}
