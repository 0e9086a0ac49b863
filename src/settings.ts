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

/** Anything but https would show the token to the network in between; only this very machine may go without. */
const api = z.string().refine((address) => {
  if (!URL.canParse(address)) return false;
  const { protocol, hostname } = new URL(address);
  return protocol === "https:" || (protocol === "http:" && ["localhost", "127.0.0.1", "[::1]"].includes(hostname));
}, "an https address (http only for this machine itself)");

const Schema = z.object({
  GLEED_DATABASE: z.string().min(1).optional().describe("file, :memory: or postgres URL of the records"),
  GLEED_DATABASE_FILE: z.string().min(1).optional().describe("file that holds that URL and nothing else, for a URL with a password"),
  GLEED_HTTP_PORT: z.string().regex(/^\d{1,5}$/, "a port number").transform(Number).optional().describe("port on this machine for /health, /ready and /metrics; none is opened without it"),
  GLEED_LOG: z.enum(["debug", "info", "warn", "error"]).optional().describe("least of what is logged, one JSON object a line on standard error; info when not set"),
  GLEED_NOW: z.string().refine((at) => !Number.isNaN(Date.parse(at)), "an instant such as 2026-11-25T18:00:00Z").optional().describe("instant at which the clock starts and stands still (lines only)"),
  GLEED_COUNTRY: z.string().regex(/^[A-Za-z]{2}$/, "a two-letter country code such as FI").transform((code) => code.toUpperCase()).optional().describe("country whose emergency number stands when a person's is unknown"),
  GLEED_TIMEZONE: zone.optional().describe("time zone of people who did not say theirs"),
  GLEED_LOCALE: z.string().regex(/^[a-zA-Z]{2,3}([-_][a-zA-Z0-9]{2,8})*$/, "a language tag such as en-GB").optional().describe("language and number format of people who did not say theirs"),
  GLEED_KNOWLEDGE: z.string().min(1).optional().describe("folder of the knowledge, when it is not the one that came along"),
  GLEED_DISCORD_TOKEN: z.string().min(1).optional().describe("token of the Discord application; starts Discord"),
  GLEED_DISCORD_TOKEN_FILE: z.string().min(1).optional().describe("file that holds the token and nothing else, instead of the token itself"),
  GLEED_DISCORD_API: api.optional().describe("another address of Discord's API"),
  GLEED_DISCORD_GUILD: z.string().regex(/^\d{15,21}$/, "a server's id of 17 to 20 digits").optional().describe("server in which commands are registered while developing"),
  GLEED_DISCORD_PUBLIC_KEY: z.string().regex(/^[0-9a-fA-F]{64}$/, "64 hexadecimal digits").optional().describe("public key of the Discord application: takes interactions by HTTP instead of the gateway"),
  GLEED_DISCORD_PORT: z.string().regex(/^\d{1,5}$/, "a port number").transform(Number).optional().describe("port of those HTTP interactions, 8787 when not set"),
  GLEED_FORECAST_URL: api.optional().describe("address of a Locationforecast 2.0 compact endpoint, such as https://api.met.no/weatherapi/locationforecast/2.0/compact; no forecast is fetched without it"),
  GLEED_FORECAST_CONTACT: z.string().regex(/^[\x21-\x7e]{3,200}$/, "a mail or web address").optional().describe("how the forecast service reaches whoever runs this Gleed; its terms ask for it"),
  GLEED_MATRIX_HOMESERVER: api.optional().describe("address of the Matrix homeserver; starts Matrix"),
  GLEED_MATRIX_USER: z.string().min(1).optional().describe("Matrix account, as @name:server or the local name"),
  GLEED_MATRIX_TOKEN: z.string().min(1).optional().describe("access token of a login of that account"),
  GLEED_MATRIX_TOKEN_FILE: z.string().min(1).optional().describe("file that holds the token and nothing else, instead of the token itself"),
  GLEED_MATRIX_PASSWORD: z.string().min(1).optional().describe("password of the account, instead of a token"),
  GLEED_MATRIX_PASSWORD_FILE: z.string().min(1).optional().describe("file that holds the password and nothing else"),
  GLEED_MATRIX_RECOVERY_KEY_FILE: z.string().min(1).optional().describe("file in which the recovery key is kept; made at the first start"),
  GLEED_MATRIX_INVITES: z.string().regex(/^(\*|[@!]\S+|[\w.:[\]-]+)([\s,]+(\*|[@!]\S+|[\w.:[\]-]+))*$/, "*, servers, @people:server and !rooms, with spaces between").optional().describe("who may invite Gleed into a room; people of its own homeserver when not set"),
  GLEED_MATRIX_UNENCRYPTED: z.enum(["refuse", "groups"]).optional().describe("whether groups without encryption are answered; private talks without it never are"),
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
  readonly http_port?: number;
  readonly log: "debug" | "info" | "warn" | "error";
  readonly discord?: DiscordSettings;
  readonly forecast?: { readonly url: string; readonly contact: string };
  readonly matrix?: MatrixSettings;
}
export interface MatrixSettings {
  readonly homeserver: string;
  readonly user?: string;
  readonly token?: Secret;
  readonly password?: Secret;
  readonly recovery_key_file: string;
  readonly invites: readonly string[];
  readonly unencrypted: "refuse" | "groups";
}
export interface DiscordSettings {
  readonly token: Secret;
  readonly api?: string;
  readonly guild?: string;
  readonly http?: { readonly public_key: string; readonly port: number };
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
  // what is well-formed is looked at all the same, so that every mistake is named at once
  const wrong = new Set(read.error?.issues.map(({ path }) => String(path[0])));
  const usable = read.data ?? Schema.parse(Object.fromEntries(Object.entries(given).filter(([key]) => !wrong.has(key))));
  const discord = discordFrom(usable, problems);
  const { GLEED_FORECAST_URL: url, GLEED_FORECAST_CONTACT: contact } = usable;
  if (url && !contact) problems.push("GLEED_FORECAST_URL is set without GLEED_FORECAST_CONTACT; the service's terms ask for a mail or web address to reach you.");
  const matrix = matrixFrom(usable, env, problems);
  const location = usable.GLEED_DATABASE_FILE ? secretIn("GLEED_DATABASE_FILE", usable.GLEED_DATABASE_FILE, problems) : usable.GLEED_DATABASE;
  if (usable.GLEED_DATABASE_FILE && usable.GLEED_DATABASE && env.GLEED_DATABASE) problems.push("GLEED_DATABASE and GLEED_DATABASE_FILE are both set; one of them is enough.");
  if (problems.length > 0 || !read.success) throw new BadSettings(problems);
  const { GLEED_NOW, GLEED_COUNTRY, GLEED_TIMEZONE, GLEED_LOCALE, GLEED_KNOWLEDGE, GLEED_HISTORY } = read.data;
  return {
    database: location ?? database,
    ...(GLEED_NOW ? { now_ms: Date.parse(GLEED_NOW) } : {}),
    ...(GLEED_COUNTRY ? { country: GLEED_COUNTRY } : {}),
    timezone: GLEED_TIMEZONE ?? "UTC",
    locale: GLEED_LOCALE ?? "en-GB",
    ...(GLEED_KNOWLEDGE ? { knowledge: GLEED_KNOWLEDGE } : {}),
    history: GLEED_HISTORY !== "off",
    log: usable.GLEED_LOG ?? "info",
    ...(usable.GLEED_HTTP_PORT === undefined ? {} : { http_port: usable.GLEED_HTTP_PORT }),
    ...(discord ? { discord } : {}),
    ...(url && contact ? { forecast: { url, contact } } : {}),
    ...(matrix ? { matrix } : {}),
  };
}

function matrixFrom(read: z.output<typeof Schema>, env: Environment, problems: string[]): MatrixSettings | undefined {
  if (!read.GLEED_MATRIX_HOMESERVER) return undefined;
  const secret = (name: "GLEED_MATRIX_TOKEN" | "GLEED_MATRIX_PASSWORD"): Secret | undefined => {
    const file = read[`${name}_FILE`];
    const words = read[name] ?? (file ? secretIn(`${name}_FILE`, file, problems) : undefined);
    return words ? new Secret(words) : undefined;
  };
  const [token, password] = [secret("GLEED_MATRIX_TOKEN"), secret("GLEED_MATRIX_PASSWORD")];
  if (!token && !(password && read.GLEED_MATRIX_USER)) problems.push("GLEED_MATRIX_HOMESERVER is set without an account; it takes GLEED_MATRIX_TOKEN, or GLEED_MATRIX_USER with GLEED_MATRIX_PASSWORD.");
  return {
    homeserver: read.GLEED_MATRIX_HOMESERVER.replace(/\/+$/, ""),
    ...(read.GLEED_MATRIX_USER ? { user: read.GLEED_MATRIX_USER } : {}),
    ...(token ? { token } : {}),
    ...(password ? { password } : {}),
    recovery_key_file: read.GLEED_MATRIX_RECOVERY_KEY_FILE ?? join(env.XDG_CONFIG_HOME || join(homedir(), ".config"), "gleed", "matrix-recovery-key"),
    invites: read.GLEED_MATRIX_INVITES?.split(/[\s,]+/).filter(Boolean) ?? [],
    unencrypted: read.GLEED_MATRIX_UNENCRYPTED ?? "refuse",
  };
}

function discordFrom(read: z.output<typeof Schema>, problems: string[]): DiscordSettings | undefined {
  const token = read.GLEED_DISCORD_TOKEN?.trim() ?? (read.GLEED_DISCORD_TOKEN_FILE ? secretIn("GLEED_DISCORD_TOKEN_FILE", read.GLEED_DISCORD_TOKEN_FILE, problems) : undefined);
  if (!token) return undefined;
  return {
    token: new Secret(token),
    ...(read.GLEED_DISCORD_API ? { api: read.GLEED_DISCORD_API.replace(/\/+$/, "") } : {}),
    ...(read.GLEED_DISCORD_GUILD ? { guild: read.GLEED_DISCORD_GUILD } : {}),
    ...(read.GLEED_DISCORD_PUBLIC_KEY ? { http: { public_key: read.GLEED_DISCORD_PUBLIC_KEY, port: read.GLEED_DISCORD_PORT ?? 8787 } } : {}),
  };
}

/** One line of a file, for what should not stand in an environment. */
function secretIn(setting: string, path: string, problems: string[]): string | undefined {
  try {
    const words = readFileSync(path, "utf8").trim();
    if (words !== "" && !/\s/.test(words)) return words;
    problems.push(`the file of ${setting} is empty or holds more than one word; it takes the secret alone.`);
  } catch {
    problems.push(`the file of ${setting} cannot be read.`);
  }
  return undefined;
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
