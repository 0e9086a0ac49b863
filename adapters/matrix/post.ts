/** Sending: encrypted where the room is, under a fixed transaction id, so that the homeserver drops a second copy of the same. */
import { createHash } from "node:crypto";
import { ConnectionError, type MatrixClient, MatrixError, MatrixEvent, Method } from "matrix-js-sdk";
import type { CryptoBackend } from "matrix-js-sdk/lib/common-crypto/CryptoBackend.js";
import type { Log } from "../../src/delivery/log.ts";
import type { Rows } from "./store/rows.ts";

/** Will never be sent: forbidden, gone, too large. */
export class Refused extends Error {}
/** Not sent, and worth another try after so long. */
export class Later extends Error {
  readonly after_ms: number;
  constructor(why: string, after_ms: number) {
    super(why);
    this.after_ms = after_ms;
  }
}

export interface Post {
  /**
   * One try.
   * @returns the event's id
   * @throws Refused, Later, or whatever left it unknown whether the event arrived
   */
  once(room_id: string, type: string, content: object, txn: string): Promise<string>;
  /** Until it is sent. @throws Refused, Stopped */
  until(room_id: string, type: string, content: object, txn: string): Promise<string>;
  redact(room_id: string, event_id: string, txn: string): Promise<void>;
}
export class Stopped extends Error {}

/** Made of what caused it, so that it is the same after a restart. */
export const txnOf = (...parts: readonly (string | number)[]): string => `g${createHash("sha256").update(parts.join("\n")).digest("hex").slice(0, 32)}`;

const REFUSALS = new Set(["M_FORBIDDEN", "M_TOO_LARGE", "M_NOT_FOUND", "M_UNRECOGNIZED", "M_BAD_JSON", "M_INVALID_PARAM", "M_DUPLICATE_ANNOTATION", "M_GUEST_ACCESS_FORBIDDEN"]);
const FIRST_MS = 500;
const LONGEST_MS = 30_000;

export interface PostDeps {
  readonly client: MatrixClient;
  readonly rows: Pick<Rows, "sent" | "setSent">;
  readonly now: () => number;
  readonly log: Log;
  readonly stopping: AbortSignal;
}

export function poster({ client, rows, now, log, stopping }: PostDeps): Post {
  async function sealed(room_id: string, type: string, content: object): Promise<{ type: string; content: object }> {
    if (type === "m.reaction") return { type, content };
    const room = client.getRoom(room_id);
    if (!room) throw new Later("the room is not known yet", 2_000);
    const crypto = client.getCrypto() as unknown as CryptoBackend | undefined;
    if (!crypto) throw new Error("encryption is not set up");
    if (!room.hasEncryptionStateEvent() && !(await crypto.isEncryptionEnabledInRoom(room_id))) return { type, content };
    const event = new MatrixEvent({ type, content: { ...content }, room_id, sender: client.getSafeUserId() });
    await crypto.encryptEvent(event, room);
    if (event.getWireType() !== "m.room.encrypted") throw new Error("an event for an encrypted room was left in clear");
    return { type: event.getWireType(), content: event.getWireContent() };
  }

  async function put(path: string, body: object): Promise<string> {
    const { event_id } = await client.http.authedRequest<{ event_id: string }>(Method.Put, path, undefined, body as Record<string, unknown>);
    return event_id;
  }

  async function once(room_id: string, type: string, content: object, txn: string): Promise<string> {
    const before = rows.sent(txn);
    if (before !== null) return before;
    try {
      const wire = await sealed(room_id, type, content);
      const event_id = await put(`/rooms/${encodeURIComponent(room_id)}/send/${encodeURIComponent(wire.type)}/${txn}`, wire.content);
      rows.setSent(txn, event_id, room_id, now());
      return event_id;
    } catch (error) {
      throw asOurs(error);
    }
  }

  async function keepTrying<T>(work: () => Promise<T>): Promise<T> {
    for (let tries = 0; ; tries++) {
      if (stopping.aborted) throw new Stopped();
      try {
        return await work();
      } catch (error) {
        if (error instanceof Refused || error instanceof Stopped) throw error;
        const wait_ms = Math.max(error instanceof Later ? error.after_ms : 0, Math.min(LONGEST_MS, FIRST_MS * 2 ** tries));
        log.info({ why: String(error), wait_ms }, "sending failed, will try again");
        await pause(wait_ms, stopping);
      }
    }
  }

  return {
    once,
    until: (room_id, type, content, txn) => keepTrying(() => once(room_id, type, content, txn)),
    async redact(room_id, event_id, txn) {
      if (rows.sent(txn) !== null) return;
      await keepTrying(async () => {
        try {
          await put(`/rooms/${encodeURIComponent(room_id)}/redact/${encodeURIComponent(event_id)}/${txn}`, {});
          rows.setSent(txn, event_id, room_id, now());
        } catch (error) {
          throw asOurs(error);
        }
      });
    },
  };
}

function asOurs(error: unknown): unknown {
  if (!(error instanceof MatrixError)) return error;
  if (error.errcode === "M_LIMIT_EXCEEDED" || error.httpStatus === 429) return new Later("rate limited", error.getRetryAfterMs() ?? 1_000);
  if (error.httpStatus === 413 || (error.errcode && REFUSALS.has(error.errcode))) return new Refused(`${error.errcode ?? error.httpStatus}`);
  return error;
}

/** Whether the homeserver could not be reached or is in trouble itself. */
export const isOutage = (error: unknown): boolean =>
  error instanceof ConnectionError || (error instanceof MatrixError && (error.httpStatus ?? 0) >= 500);

export function pause(ms: number, stopping: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const end = (): void => {
      clearTimeout(timer);
      stopping.removeEventListener("abort", end);
      resolve();
    };
    const timer = setTimeout(end, ms);
    stopping.addEventListener("abort", end, { once: true });
  });
}
