/** Slash and message commands: read from their data file, given to Discord only when they changed, turned into what the core is told. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";
import { z } from "zod";
import type { Message } from "../../src/message.ts";
import type { Memory } from "./memory.ts";

const MANAGE_GUILD = String(1 << 5);
const LOCALES: Readonly<Record<string, readonly string[]>> = { de: ["de"] };

const words = z.strictObject({ en: z.string().min(1), de: z.string().min(1).optional() });
const name = z.strictObject({ en: z.string().regex(/^[-_\p{Ll}\p{N}]{1,32}$/u), de: z.string().regex(/^[-_\p{Ll}\p{N}]{1,32}$/u).optional() });
const Option = z.strictObject({
  name,
  about: words,
  required: z.boolean().optional(),
  kind: z.enum(["text", "picture", "yes"]).optional(),
  unit: z.string().optional(),
  suggests: z.string().optional(),
  field: z.string().optional(),
});
const does = {
  answers: z.enum(["private", "whisper", "group"]),
  moderators: z.boolean().optional(),
  says: z.array(z.union([z.string(), z.array(z.string())])).optional(),
  form: z.string().optional(),
  choice: z.string().optional(),
  keeps: z.literal("notices").optional(),
};
const Slash = z.strictObject({ name, about: words, options: z.array(Option).max(25).optional(), ...does });
const OnMessage = z.strictObject({ name: words, ...does });
const CommandsFile = z.strictObject({ slash: z.array(Slash).max(100), message: z.array(OnMessage).max(15) });

export type Command = z.output<typeof Slash>;
export type MessageCommand = z.output<typeof OnMessage>;
export type Commands = z.output<typeof CommandsFile>;

const SHIPPED = fileURLToPath(new URL("../../knowledge", import.meta.url));

/** @throws when the file is missing or does not fit, saying where */
export function readCommands(folder: string = SHIPPED): Commands {
  return CommandsFile.parse(parse(readFileSync(join(folder, "commands.yaml"), "utf8")));
}

type Words = { readonly en: string; readonly de?: string | undefined };
const localised = (key: string, given: Words): Record<string, unknown> => {
  const others = Object.entries(LOCALES).flatMap(([language, locales]) => locales.flatMap((locale) => (given[language as "de"] ? [[locale, given[language as "de"]]] : [])));
  return { [key]: given.en, ...(others.length > 0 ? { [`${key}_localizations`]: Object.fromEntries(others) } : {}) };
};

const KINDS = { text: 3, picture: 11, yes: 5 } as const;
const IN_SERVERS_ONLY = { integration_types: [0], contexts: [0] };
const EVERYWHERE = { integration_types: [0, 1], contexts: [0, 1, 2] };

/** What Discord is given. */
export function registration({ slash, message }: Commands): Record<string, unknown>[] {
  const around = (moderators: boolean | undefined) => (moderators ? { ...IN_SERVERS_ONLY, default_member_permissions: MANAGE_GUILD } : { ...EVERYWHERE, default_member_permissions: null });
  return [
    ...slash.map((command) => ({
      type: 1,
      ...localised("name", command.name),
      ...localised("description", command.about),
      ...(command.options
        ? {
            options: command.options.map((option) => ({
              type: KINDS[option.kind ?? "text"],
              ...localised("name", option.name),
              ...localised("description", option.about),
              required: option.required ?? false,
              ...(option.suggests ? { autocomplete: true } : {}),
              ...((option.kind ?? "text") === "text" ? { max_length: option.required ? 2000 : 200 } : {}),
            })),
          }
        : {}),
      ...around(command.moderators),
    })),
    ...message.map((command) => ({ type: 3, ...localised("name", command.name), ...around(command.moderators) })),
  ];
}

const sorted = (value: unknown): unknown =>
  Array.isArray(value) ? value.map(sorted)
  : typeof value === "object" && value !== null ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, inner]) => [key, sorted(inner)]))
  : value;

/**
 * Gives the commands to Discord when they are not those given last.
 * @param scope where they hold: `global`, or a server's id while developing
 * @returns whether they were given
 */
export async function register(commands: readonly unknown[], memory: Memory, application: string, scope: string, put: (body: readonly unknown[]) => Promise<unknown>): Promise<boolean> {
  const key = `commands:${application}:${scope}`;
  const hash = createHash("sha256").update(JSON.stringify(sorted(commands))).digest("hex");
  if (memory.get(key) === hash) return false;
  await put(commands);
  memory.set(key, hash);
  return true;
}

export type Given = Readonly<Record<string, string>>;

/** What a command with these options tells the core. Options that were not given take their piece of the message with them. */
export function toldBy(command: Pick<Command, "says" | "form" | "choice"> & { readonly options?: Command["options"] }, given: Given): Pick<Message, "text" | "choice" | "form"> {
  const value = (option: string): string | undefined => {
    const raw = given[option]?.trim();
    const unit = command.options?.find((one) => one.name.en === option)?.unit;
    return unit && raw && /^[\d.,]+$/.test(raw) ? `${raw} ${unit}` : raw;
  };
  const filled = (piece: string): string | null => {
    const names = [...piece.matchAll(/\{(\w+)\}/g)].map(([, found]) => found ?? "");
    return names.every((found) => given[found] !== undefined && (value(found) !== "" || piece !== `{${found}}`)) ? piece.replace(/\{(\w+)\}/g, (_, found: string) => value(found) ?? "") : null;
  };
  if (command.choice !== undefined && Object.keys(given).length === 0) return { choice: command.choice };
  if (command.form !== undefined) return { form: { id: command.form, values: Object.fromEntries((command.options ?? []).flatMap(({ name: option, field }) => (field && value(option.en) ? [[field, value(option.en)]] : []))) } };
  const pieces = (command.says ?? []).map((piece) => (typeof piece === "string" ? [piece] : piece).map(filled).find((found) => found !== null) ?? null);
  const text = pieces.filter((piece) => piece !== null && piece !== "").join(" ").trim();
  return text === "" && command.choice !== undefined ? { choice: command.choice } : { text };
}

interface SentOption {
  readonly name: string;
  readonly type: number;
  readonly value?: unknown;
}
/** Options as Discord sends them; a yes that was not said counts as not given, a picture is handed over apart. */
export function givenBy(options: readonly SentOption[] | undefined): { given: Given; picture: string | null } {
  const given: Record<string, string> = {};
  let picture: string | null = null;
  for (const { name: key, type, value } of options ?? []) {
    if (type === KINDS.picture) picture = String(value);
    else if (type === KINDS.yes) {
      if (value === true) given[key] = "";
    } else given[key] = String(value);
  }
  return { given, picture };
}
