/** The terminal as a chat network of one place: what is typed or piped in, line by line, and the answers below. */
import { createInterface, type Interface } from "node:readline/promises";
import type { Readable } from "node:stream";
import type { Text } from "../../src/answer.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import type { Adapter } from "../adapter.ts";
import type { Drawn } from "../drawn.ts";
import { saysOneOf } from "../forms.ts";
import { plain } from "../plain.ts";
import { keepIn } from "./documents.ts";
import { keepLine, readHistory } from "./history.ts";
import { renderWords } from "./render.ts";
import { type Output, PROMPT, writer } from "./send.ts";
import { type Talk, talk } from "./talk.ts";

export interface TerminalOptions {
  readonly stdin: Readable & { readonly isTTY?: boolean };
  readonly stdout: Output;
  readonly render: Renderer;
  /** how the adapter's own words are shown until an answer says how its reader reads */
  readonly reader: Reader;
  readonly person: { readonly id: string; readonly name?: string };
  /** tells this start apart from every other: part of each message's id */
  readonly session: string;
  readonly now: () => number;
  readonly locale?: string;
  readonly greeting?: Text;
  /** file of the lines typed before; none are kept without it */
  readonly history?: string;
  /** folder for pages and tables that were asked for; without it they are read out */
  readonly documents?: string;
  /** draws pictures to files; without it they are given in words */
  readonly draw?: Drawn;
  /** default: on a terminal that shows colours, and not where NO_COLOR forbids them */
  readonly colour?: boolean;
  readonly onError?: (error: unknown) => void;
}

export interface Terminal extends Adapter {
  /** Resolves when the person left or the input ended, and everything typed before is answered. */
  readonly ended: Promise<void>;
}

export const NETWORK = "terminal";

/** Piped lines come all at once and are worked in order; a line that takes longer than this keeps no danger behind it from an answer. */
const PIPED_PATIENCE_MS = 250;

export function terminal(options: TerminalOptions): Terminal {
  const { stdin, stdout, render, reader, history } = options;
  const isTerminal = stdin.isTTY === true && stdout.isTTY === true;
  let rl: Interface | null = null;
  let current: Talk | null = null;
  let leaving = false;
  let warned = false;
  const out = writer(stdout, () => (leaving ? null : rl), options.colour ?? (stdout.isTTY === true && (stdout.hasColors?.() ?? false)));
  const ended = Promise.withResolvers<void>();

  function leave(): void {
    leaving = true;
    rl?.close();
  }

  function onLine(line: string): void {
    warned = false;
    if (isTerminal) {
      out.typed(line);
      if (!current?.filling() && saysOneOf(line.trim(), current?.label("words-leave") ?? "")) return leave();
      if (history) keepLine(history, line);
    }
    current?.take(line);
  }

  /** Puts the line being typed aside, where the up arrow finds it; with nothing typed, says how to leave, then leaves. */
  function onInterrupt(): void {
    const typed = rl?.line ?? "";
    if (typed === "" && warned) return leave();
    warned = typed === "";
    const past = (rl as unknown as { history?: string[] } | null)?.history;
    if (typed !== "" && past && past[0] !== typed) past.unshift(typed);
    out.typed(typed);
    rl?.write(null, { ctrl: true, name: "e" });
    rl?.write(null, { ctrl: true, name: "u" });
    current?.say(typed === "" ? "leave-hint" : "cleared");
    out.prompt();
  }

  return {
    network: NETWORK,
    ended: ended.promise,

    async start(core) {
      rl = createInterface({
        input: stdin,
        output: isTerminal ? stdout : undefined,
        terminal: isTerminal,
        prompt: PROMPT,
        crlfDelay: Number.POSITIVE_INFINITY,
        ...(isTerminal && history ? { history: readHistory(history) } : {}),
        historySize: isTerminal ? 500 : 0,
        removeHistoryDuplicates: true,
      });
      current = talk({
        core,
        out,
        render,
        reader,
        event: (number) => ({
          adapter: NETWORK,
          native_id: `${options.session}-${number}`,
          identity: { network: NETWORK, ...options.person },
          place: { network: NETWORK, id: options.person.id, kind: "private", encrypted: null },
          received_at_ms: options.now(),
          ...(options.locale ? { locale: options.locale } : {}),
        }),
        ...(options.draw ? { draw: options.draw } : {}),
        ...(options.documents ? { keepFile: keepIn(options.documents) } : {}),
        patience_ms: isTerminal ? 0 : PIPED_PATIENCE_MS,
        onError: options.onError ?? (() => {}),
      });
      const { idle } = current;
      rl.on("line", onLine);
      rl.on("SIGINT", onInterrupt);
      rl.on("close", async () => {
        leaving = true;
        await idle();
        if (isTerminal) stdout.write("\n");
        ended.resolve();
      });
      if (options.greeting) out.write(renderWords(plain(render(options.greeting, reader)), out.screen()));
      out.prompt();
    },

    async stop() {
      if (!rl) return;
      leave();
      await ended.promise;
    },

    async send(outgoing, reader) {
      if (!current || stdout.destroyed || stdout.writableEnded) return { sent: false, retry: false, why: "the terminal is closed" };
      await current.show({ answer: outgoing.answer, reader }, outgoing.maybe_repeat);
      return { sent: true, native_id: null };
    },
  };
}
