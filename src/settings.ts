/** What a host can set, by environment or a settings file; every mistake named at once, in plain sentences. Secrets never print. */
import { existsSync, readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { parse } from "yaml";
import { z } from "zod";

/** A value that must never reach a log or a screen. */
export class Secret {
  readonly #value: string;
  constructor(value: string) {
    this.#value = value;
  }
  reveal(): string {
    return this.#value;
  }
  toString(): string {
    return "[secret]";
  }
  toJSON(): string {
    return "[secret]";
  }
  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return "[secret]";
  }
}

const zone = z.string().refine((name) => {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}, "a time zone such as Europe/Helsinki");

const Schema = z.object({
  GLEED_DATABASE: z.string().min(1).optional().describe("file, :memory: or postgres URL of the records"),
  GLEED_NOW: z.string().refine((at) => !Number.isNaN(Date.parse(at)), "an instant such as 2026-11-25T18:00:00Z").optional().describe("instant at which the clock starts and stands still (lines only)"),
  GLEED_COUNTRY: z.string().regex(/^[A-Za-z]{2}$/, "a two-letter country code such as FI").transform((code) => code.toUpperCase()).optional().describe("country whose emergency number stands when a person's is unknown"),
  GLEED_TIMEZONE: zone.optional().describe("time zone of people who did not say theirs"),
  GLEED_LOCALE: z.string().regex(/^[a-zA-Z]{2,3}([-_][a-zA-Z0-9]{2,8})*$/, "a language tag such as en-GB").optional().describe("language and number format of people who did not say theirs"),
  GLEED_KNOWLEDGE: z.string().min(1).optional().describe("folder of the knowledge, when it is not the one that came along"),
  GLEED_HISTORY: z.enum(["on", "off"]).optional().describe("keep the lines typed in the terminal for the next start"),
});

export type Environment = Readonly<Record<string, string | undefined>>;
export interface HostSettings {
  readonly database: string;
  readonly now_ms?: number;
  readonly country?: string;
  readonly timezone: string;
  readonly locale: string;
  readonly knowledge?: string;
  readonly history: boolean;
}

export class BadSettings extends Error {
  readonly problems: readonly string[];
  constructor(problems: readonly string[]) {
    super(`Gleed cannot start with these settings:\n${problems.map((problem) => `- ${problem}`).join("\n")}`);
    this.problems = problems;
  }
}

/** Where records and history lie when nothing else is set. */
export const stateFolder = (env: Environment): string => (env.XDG_DATA_HOME ? join(env.XDG_DATA_HOME, "gleed") : join(homedir(), ".local", "share", "gleed"));

/**
 * @param database used when none is set
 * @throws BadSettings naming every mistake at once
 */
export function readSettings(env: Environment, database: string): HostSettings {
  const problems: string[] = [];
  const file = env.GLEED_SETTINGS ? fromFile(env.GLEED_SETTINGS, problems) : {};
  const given = Object.fromEntries(Object.keys(Schema.shape).map((key) => [key, env[key] || file[key]]));
  for (const key of Object.keys(file)) if (!(key in Schema.shape)) problems.push(`${key} in the settings file is not a setting; known are ${Object.keys(Schema.shape).join(", ")}.`);
  const read = Schema.safeParse(given);
  for (const issue of read.error?.issues ?? []) problems.push(`${issue.path.join(".")} is "${String(given[issue.path.join(".")])}"; it takes ${issue.message}.`);
  if (problems.length > 0 || !read.success) throw new BadSettings(problems);
  const { GLEED_DATABASE, GLEED_NOW, GLEED_COUNTRY, GLEED_TIMEZONE, GLEED_LOCALE, GLEED_KNOWLEDGE, GLEED_HISTORY } = read.data;
  return {
    database: GLEED_DATABASE ?? database,
    ...(GLEED_NOW ? { now_ms: Date.parse(GLEED_NOW) } : {}),
    ...(GLEED_COUNTRY ? { country: GLEED_COUNTRY } : {}),
    timezone: GLEED_TIMEZONE ?? "UTC",
    locale: GLEED_LOCALE ?? "en-GB",
    ...(GLEED_KNOWLEDGE ? { knowledge: GLEED_KNOWLEDGE } : {}),
    history: GLEED_HISTORY !== "off",
  };
}

function fromFile(path: string, problems: string[]): Record<string, string> {
  if (!existsSync(path)) {
    problems.push("GLEED_SETTINGS names a file that does not exist.");
    return {};
  }
  try {
    const read: unknown = parse(readFileSync(path, "utf8"));
    return typeof read === "object" && read !== null ? Object.fromEntries(Object.entries(read).map(([key, value]) => [key, String(value)])) : {};
  } catch (error) {
    problems.push(`the settings file is not well-formed: ${String(error).split("\n")[0]}`);
    return {};
  }
}
