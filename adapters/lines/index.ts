/**
 * Lines: one JSON object in, one out, in order. What may be an emergency is answered in this thread before anything else is waited for;
 * a line in front of it that the records keep waiting gets its error sentence, so that the order holds.
 */
import { randomUUID } from "node:crypto";
import { createInterface } from "node:readline";
import type { Readable, Writable } from "node:stream";
import { setTimeout as pause } from "node:timers/promises";
import type { Answer } from "../../src/answer.ts";
import { emergencyIn } from "../../src/conversation/emergency.ts";
import { Unanswered, type RemoteCore } from "../../src/core/remote.ts";
import { readerOf } from "../../src/delivery/reader.ts";
import type { Outlet } from "../../src/delivery/outlet.ts";
import type { Message } from "../../src/message.ts";
import type { Outgoing } from "../../src/records/ports.ts";
import { renderer, type Catalogues, type Reader, type Renderer } from "../../src/text/render.ts";
import { withFiles, type Drawn } from "../drawn.ts";
import { NETWORK, parseLine, type Line } from "./parse.ts";
import { write } from "./render.ts";

export interface LinesOptions {
  readonly input: Readable;
  readonly output: Writable;
  readonly reader: Reader;
  readonly country?: string;
  /** told why the records are closed, once */
  readonly onClosed: (why: string) => void;
  /** without it pictures are given in words only */
  readonly drawn?: Drawn;
  startCore(outlets: readonly Outlet[]): RemoteCore;
}

/** How long records may keep a line waiting: at the start, later, and while an emergency waits behind it (at the start, and later). */
const START_MS = 15_000;
const LINE_MS = 8_000;
const PATIENCE_MS = 2_000;
const COLD_PATIENCE_MS = 8_000;
const AGAIN_MS = 250;
const SILENT = "The records do not answer just now. Nothing of this line was written down; send it again in a while.";

export async function lines(options: LinesOptions): Promise<void> {
  const { input, output, reader } = options;
  const boot = randomUUID();
  const sent: { outgoing: Outgoing; reader: Reader }[] = [];
  const outlet: Outlet = {
    network: NETWORK,
    async send(outgoing, to) {
      sent.push({ outgoing, reader: to });
      return { sent: true, native_id: null };
    },
  };
  const core = options.startCore([outlet]);
  const names = new Map<string, { country?: string; locale?: string }>();
  let render: Renderer = renderer(new Map());
  let warm = false;
  const ready = core.ready(START_MS).then(
    (texts: Catalogues) => {
      render = renderer(texts);
      warm = true;
    },
    (error: unknown) => options.onClosed(error instanceof Error ? error.message : String(error)),
  );

  const put = (value: unknown): void => void output.write(`${JSON.stringify(value)}\n`);
  const answers = (list: readonly { answer: Answer; reader: Reader }[]): unknown => ({ answers: list.map((one) => write(one.answer, render, one.reader)) });

  function emergency(message: Message): unknown {
    const known = names.get(message.identity.id);
    const answer = emergencyIn(message.text, { country: known?.country, fallback_country: options.country, language: (known?.locale ?? reader.locale).slice(0, 2) });
    return answer ? answers([{ answer, reader }]) : null;
  }

  async function work(line: Line): Promise<unknown> {
    if (line.kind === "error") return { error: line.sentence };
    if (!warm) await ready;
    if (!warm) {
      // the records were closed to us at the start: try once more, briefly
      await core.ready(AGAIN_MS).then((texts) => { render = renderer(texts); warm = true; }, () => {});
      if (!warm) throw new Unanswered("not open");
    }
    if (core.stuck()) throw new Unanswered("stuck");
    if (line.kind === "advance") {
      sent.length = 0;
      await core.advance(line.ms, LINE_MS * 4);
      return { answers: await Promise.all(sent.splice(0).map(async ({ outgoing, reader: to }) => ({ ...placed(outgoing), ...write(await withFiles(outgoing.answer, to, options.drawn), render, to) }))) };
    }
    const { answer, facts } = await core.receive(line.message, LINE_MS);
    names.set(line.message.identity.id, { ...(facts.country ? { country: facts.country } : {}), ...(facts.locale ? { locale: facts.locale } : {}) });
    const reading = readerOf(facts, reader);
    const to: Reader = facts.units === undefined && facts.country === "US" ? { ...reading, system: "us" } : reading;
    return answers([{ answer: await withFiles(answer, to, options.drawn), reader: to }]);
  }

  const placed = (outgoing: Outgoing) => {
    const [kind, name = ""] = split(outgoing.network_place_id);
    return { at: new Date(outgoing.due_at_ms).toISOString(), person: kind === "private" ? name : outgoing.person_id, room: kind === "private" ? "private" : name };
  };

  const queue: { line: Line; urgent: boolean }[] = [];
  let arrived = Promise.withResolvers<void>();
  /** resolves when an emergency has come in behind the line that is being worked */
  let behind = Promise.withResolvers<void>();
  let ended = false;
  let count = 0;
  const rl = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  rl.on("line", (words) => {
    if (words.trim() === "") return;
    const line = parseLine(words, `${boot}:${count++}`, Date.now());
    const urgent = line.kind === "message" && emergency(line.message) !== null;
    queue.push({ line, urgent });
    if (urgent) behind.resolve();
    arrived.resolve();
  });
  rl.on("close", () => {
    ended = true;
    arrived.resolve();
  });

  for (;;) {
    const next = queue.shift();
    if (!next) {
      if (ended) break;
      await arrived.promise;
      arrived = Promise.withResolvers<void>();
      continue;
    }
    if (next.urgent && next.line.kind === "message") {
      // made now: what the lines before told of the person's country counts
      put(emergency(next.line.message));
      core.receive(next.line.message, LINE_MS).catch(() => {});
      continue;
    }
    behind = Promise.withResolvers<void>();
    if (queue.some((one) => one.urgent)) behind.resolve();
    const patience = new AbortController();
    const result = await Promise.race([
      work(next.line).catch((error: unknown) => ({ error: error instanceof Unanswered ? SILENT : sentence(error) })),
      behind.promise.then(() => pause(warm ? PATIENCE_MS : COLD_PATIENCE_MS, { error: SILENT }, { signal: patience.signal })).catch(() => new Promise<never>(() => {})),
    ]);
    patience.abort();
    put(result);
  }
  await core.close(2_000);
}

const split = (id: string): [string, string] => [id.slice(0, id.indexOf(":")), id.slice(id.indexOf(":") + 1)];

function sentence(error: unknown): string {
  const name = error instanceof Error ? error.name : "";
  if (/^Store|Unreachable|Busy|Broken/.test(name)) return SILENT;
  return `This could not be answered: ${error instanceof Error ? error.message : String(error)}`;
}
