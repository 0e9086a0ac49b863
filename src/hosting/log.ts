/** One JSON object a line on standard error. Words of messages, names and secrets never come here: what is logged is keys, kinds and counts. */
import { pino, type Logger } from "pino";
import type { Log } from "../delivery/log.ts";

export type Level = "debug" | "info" | "warn" | "error";

/** Where a slip of the pen would do harm, whatever is logged by those names is left out. */
const NEVER = ["text", "words", "body", "content", "token", "password", "secret", "access_token", "authorization", "answer", "message", "name"];

export function hostLog(level: Level, to: { write(line: string): void } = process.stderr): Log & { readonly pino: Logger } {
  const logger = pino(
    { level, base: null, timestamp: pino.stdTimeFunctions.isoTime, formatters: { level: (label) => ({ level: label }) }, redact: { paths: NEVER.flatMap((key) => [key, `*.${key}`]), censor: "[left out]" } },
    { write: (line) => void to.write(hidden(line)) },
  );
  return {
    pino: logger,
    info: (data, words) => logger.info(data, words),
    warn: (data, words) => logger.warn(data, words),
    error: (data, words) => logger.error(data, words),
  };
}

/** Errors of drivers quote what they were given: a URL with its password, a token in a header. */
const hidden = (line: string): string => line.replace(/([a-z]+:\/\/[^:@/\s"]*):[^@/\s"]*@/gi, "$1:[secret]@").replace(/\b(Bot|Bearer) [\w.~+/-]{8,}/g, "$1 [secret]");
