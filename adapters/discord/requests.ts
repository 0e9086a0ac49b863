/** How a request to Discord may fail, what is tried again, and what that says in plain words. */
import { DefaultRestOptions, DiscordAPIError, HTTPError, RateLimitError, type RESTOptions } from "discord.js";
import type { Sent } from "../adapter.ts";

/** One try of an acknowledgement; the platform waits 3 s in all. */
const ACK_TRY_MS = 900;
const TRIES = 3;
/** The library waits whole seconds when it is told to slow down; an acknowledgement has not got them, and waits as short as it was told. */
const MOST_ACK_WAIT_MS = 700;
const SLOWED_TRIES = 5;

const NEVER_ARRIVED = new Set(["ECONNREFUSED", "ENOTFOUND", "EAI_AGAIN", "UND_ERR_CONNECT_TIMEOUT"]);
const CUT = new Set([...NEVER_ARRIVED, "UND_ERR_SOCKET", "ECONNRESET", "EPIPE", "ETIMEDOUT"]);

const codeOf = (error: unknown): string => {
  const { code, name, cause } = (error ?? {}) as { code?: unknown; name?: unknown; cause?: unknown };
  return typeof code === "string" ? code : name === "TimeoutError" ? "TimeoutError" : cause ? codeOf(cause) : "";
};

/** Whether sending the same once more cannot be seen twice: an acknowledgement, anything idempotent, a message with an enforced nonce. */
function repeatable(url: string, init: { method?: string | undefined; body?: unknown }): boolean {
  const method = init.method ?? "GET";
  if (method !== "POST" || isAck(url)) return true;
  if (!/\/messages(?:\?|$)/.test(url)) return !url.includes("/webhooks/");
  const words = typeof init.body === "string" ? init.body : init.body instanceof FormData ? String(init.body.get("payload_json")) : "";
  return words.includes('"enforce_nonce":true');
}
const isAck = (url: string): boolean => /\/interactions\/\d+\/[^/]+\/callback(?:\?|$)/.test(url);

/** Tries again what the library gives up at once: a cut connection, and an acknowledgement that hangs. */
export const makeRequest: RESTOptions["makeRequest"] = async (url, init) => {
  const urgent = isAck(url);
  for (let tries = 1; ; tries++) {
    try {
      const signal = urgent ? AbortSignal.any([AbortSignal.timeout(ACK_TRY_MS), ...(init.signal ? [init.signal as AbortSignal] : [])]) : init.signal;
      const response = await DefaultRestOptions.makeRequest(url, { ...init, signal } as typeof init);
      const wait_ms = urgent && response.status === 429 ? 1_000 * Number(response.headers.get("x-ratelimit-reset-after") ?? Number.NaN) : Number.NaN;
      if (!(wait_ms <= MOST_ACK_WAIT_MS) || tries >= SLOWED_TRIES) return response;
      await response.arrayBuffer();
      await new Promise((resolve) => setTimeout(resolve, wait_ms + 20));
    } catch (error) {
      const code = codeOf(error);
      const again = repeatable(url, init as { method?: string }) ? CUT.has(code) || (urgent && code === "TimeoutError") : NEVER_ARRIVED.has(code);
      if (!again || tries >= TRIES || init.signal?.aborted) throw error;
      if (!urgent) await new Promise((resolve) => setTimeout(resolve, 150 * 2 ** tries));
    }
  }
};

export type Failure =
  | "too-late" /* the interaction is not known any more */
  | "already" /* it was acknowledged before */
  | "expired" /* the token of the interaction has run out, or its message is gone */
  | "closed" /* direct messages are closed */
  | "forbidden" /* a right is missing */
  | "gone" /* channel or message is gone */
  | "too-many" /* no more follow-ups for somebody who brought the app along */
  | "unauthorized" /* the token is refused: nothing goes on */
  | "invalid" /* refused as it is: a fault of ours */
  | "passing"; /* the network or the platform is in trouble: worth another try */

const CODES: Readonly<Record<number, Failure>> = {
  10062: "too-late", 40060: "already", 50027: "expired", 10015: "expired", 50007: "closed", 50278: "closed", 50001: "forbidden", 50013: "forbidden",
  10003: "gone", 10004: "gone", 10008: "gone", 10013: "gone", 40094: "too-many", 20016: "passing", 40062: "passing",
};

export function failureOf(error: unknown): Failure {
  if (error instanceof DiscordAPIError) {
    const known = typeof error.code === "number" ? CODES[error.code] : undefined;
    if (known) return known;
    if (error.status === 401) return "unauthorized";
    if (error.status === 403) return "forbidden";
    if (error.status === 404) return "gone";
    return error.status === 429 || error.status >= 500 ? "passing" : "invalid";
  }
  if (error instanceof HTTPError || error instanceof RateLimitError) return "passing";
  if (error instanceof Error && error.message.startsWith("Expected token to be set")) return "unauthorized";
  return "passing";
}

/** Never a body, never a token: what failed and how, for the log. */
export const reason = (error: unknown): string =>
  error instanceof DiscordAPIError ? `${error.status} ${error.code} ${error.message.slice(0, 200)}`
  : error instanceof HTTPError ? `HTTP ${error.status}`
  : error instanceof RateLimitError ? "rate limit"
  : codeOf(error) || (error instanceof Error ? error.message.slice(0, 200) : String(error).slice(0, 200));

export function sentOf(error: unknown): Sent {
  const failure = failureOf(error);
  if (failure === "unauthorized") return { sent: false, retry: true, after_ms: 60_000, why: "Discord refuses the token" };
  if (failure !== "passing") return { sent: false, retry: false, why: `${failure}: ${reason(error)}` };
  const after_ms = error instanceof RateLimitError ? error.retryAfter : undefined;
  return { sent: false, retry: true, why: reason(error), ...(after_ms === undefined ? {} : { after_ms }) };
}

/** Again and again, with growing waits, while the trouble may pass. */
export async function persist<T>(work: () => Promise<T>, tries = 5, first_ms = 250): Promise<T> {
  for (let at = 1; ; at++) {
    try {
      return await work();
    } catch (error) {
      if (at >= tries || failureOf(error) !== "passing") throw error;
      await new Promise((resolve) => setTimeout(resolve, first_ms * 2 ** (at - 1) * (0.5 + Math.random() / 2)));
    }
  }
}
