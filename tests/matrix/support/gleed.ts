/**
 * The Matrix adapter in a process of its own: with the whole of Gleed on a clock that is moved by hand, or with a core that only echoes.
 * Run with node, not imported; options as JSON in the first argument, commands as lines of JSON on standard input.
 */
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { Core } from "../../../adapters/adapter.ts";
import { matrix, WINDOW_MS } from "../../../adapters/matrix/index.ts";
import { answer, type Block, type FormField, verbatim } from "../../../src/answer.ts";
import { emergencyIn } from "../../../src/conversation/emergency.ts";
import { startCore } from "../../../src/core/remote.ts";
import type { Log } from "../../../src/delivery/log.ts";
import { front } from "../../../src/front.ts";
import { fileFor } from "../../../src/pictures/album.ts";
import { Secret } from "../../../src/settings.ts";
import { loadCatalogues } from "../../../src/text/catalogues.ts";
import { type Renderer, renderer } from "../../../src/text/render.ts";

export interface GleedOptions {
  readonly core: "whole" | "echo";
  readonly homeserver: string;
  readonly user: string;
  readonly password?: string;
  readonly token?: string;
  readonly folder: string;
  readonly recovery_key_file?: string;
  readonly invites?: readonly string[];
  readonly unencrypted?: "refuse" | "groups";
  readonly stands_at_ms?: number;
  readonly budget?: { readonly most: number; readonly in_ms: number; readonly same?: number };
}

const options = JSON.parse(process.argv[2] ?? "{}") as GleedOptions;
const out = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);
const log: Log = {
  info: (data, words) => out({ log: "info", words, ...data }),
  warn: (data, words) => out({ log: "warn", words, ...data }),
  error: (data, words) => out({ log: "error", words, ...data }),
};
const reader = { locale: "en-GB", system: "metric", timezone: "Europe/Helsinki" } as const;
let render: Renderer = renderer(await loadCatalogues());

const adapter = matrix({
  homeserver: options.homeserver,
  user: options.user,
  ...(options.password ? { password: new Secret(options.password) } : {}),
  ...(options.token ? { token: new Secret(options.token) } : {}),
  database: join(options.folder, "matrix.sqlite"),
  recovery_key_file: options.recovery_key_file ?? join(options.folder, "apart", "recovery-key"),
  ...(options.invites ? { invites: options.invites } : {}),
  ...(options.unencrypted ? { unencrypted: options.unencrypted } : {}),
  ...(options.budget ? { budget: options.budget } : {}),
  render: (words, to) => render(words, to),
  reader,
  log,
  now: Date.now,
  draw: (picture, to) => fileFor(picture, to, join(options.folder, "pictures")),
  onBroken: () => process.exit(70),
  onFatal: () => process.exit(1),
});

const echo: Core = {
  emergency(message) {
    const urgent = emergencyIn(message.text, { language: "en" });
    return urgent ? { answer: urgent, reader } : null;
  },
  async receive({ text, choice, place, identity, picture, form }) {
    const words = `echo ${form ? `form ${JSON.stringify(form.values)}` : choice ? `choice ${choice}` : picture ? `picture ${picture.bytes.length}` : text} ${place.kind} ${place.moderates ? "moderates" : "member"} ${identity.name ?? "nameless"}`;
    const choices = ["a", "b"].map((id) => ({ id, label: verbatim(`${id}!`) }));
    const fields: FormField[] = [
      { key: "name", label: verbatim("Name"), kind: "text" },
      { key: "which", label: verbatim("Which"), kind: "choice", choices },
      { key: "sure", label: verbatim("Sure"), kind: "yes-no" },
    ];
    const blocks: Block[] = /^ask\b/.test(text ?? "")
      ? [{ kind: "question", id: "q", text: verbatim("which?"), choices, cautions: [] }]
      : /^form\b/.test(text ?? "")
        ? [{ kind: "form", id: "f", title: verbatim("A form"), fields, cautions: [] }]
        : [];
    return { answer: answer({ topic: "help", headline: verbatim(words), blocks }, new Map()), reader };
  },
};

let core = echo;
let advance: (ms: number) => Promise<unknown> = async () => {};
if (options.core === "whole") {
  const remote = startCore(
    {
      database: join(options.folder, "gleed.sqlite"), windows_ms: { matrix: WINDOW_MS }, ticking: options.stands_at_ms === undefined,
      settings: { timezone: reader.timezone, locale: reader.locale, country: "FI" },
      ...(options.stands_at_ms === undefined ? {} : { stands_at_ms: options.stands_at_ms }),
    },
    [adapter],
    log,
  );
  render = renderer(await remote.ready(20_000));
  core = front({ remote, reader, country: "FI", limit_ms: 10_000 });
  advance = (ms) => remote.advance(ms, 60_000);
}

try {
  await adapter.start(core);
} catch (error) {
  out({ failed: error instanceof Error ? `${error.name} ${error.message}` : String(error) });
  process.exit(1);
}
out({ ready: true, rss_MB: Math.round(process.memoryUsage().rss / 1e6), cpu_ms: Math.round(process.cpuUsage().user / 1e3) });

createInterface({ input: process.stdin }).on("line", async (line) => {
  const command = JSON.parse(line) as { advance?: number; stop?: true; memory?: true };
  if (command.memory) return out({ rss_MB: Math.round(process.memoryUsage().rss / 1e6) });
  if (command.advance !== undefined) {
    await advance(command.advance).then(
      () => out({ advanced: command.advance }),
      (error: unknown) => out({ advanced: command.advance, failed: String(error) }),
    );
  }
  if (command.stop) {
    await adapter.stop();
    process.exit(0);
  }
});
