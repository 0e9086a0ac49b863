/** A whole Gleed in this process: real store in memory, real knowledge, a clock that stands still. What an outside check sees through lines. */
import { parseLine } from "../../adapters/lines/parse.ts";
import { write, type Written } from "../../adapters/lines/render.ts";
import { openCore, type Core } from "../../src/core/core.ts";
import type { Message } from "../../src/message.ts";
import { silent } from "../../src/delivery/log.ts";
import { readerOf } from "../../src/delivery/reader.ts";
import type { Outgoing } from "../../src/records/ports.ts";
import { renderer, type Reader, type Renderer } from "../../src/text/render.ts";

/** What lines cannot say: a moderator's right, a picture. */
export interface Said {
  readonly moderates?: boolean;
  /** another network than lines, by name */
  readonly network?: string;
  /** what is said to one person in a room is seen by that person only; lines says so by itself */
  readonly whispers?: boolean;
  readonly picture?: Message["picture"];
  readonly picture_missing?: NonNullable<Message["picture_missing"]>;
}

export interface Talk {
  say(person: string, text: string, room?: string, more?: Said): Promise<Written>;
  choose(person: string, choice: string, room?: string, more?: Said): Promise<Written>;
  records(person: string, records: Record<string, unknown>, more?: Said): Promise<Written>;
  /** what fell due on the way */
  advance(duration: string): Promise<(Written & { at: string; network: string; place: string })[]>;
  /** everything kept about somebody */
  kept(person: string, network?: string): Promise<Record<string, unknown> | null>;
  now(): number;
  readonly render: Renderer;
  close(): Promise<void>;
}

export interface TalkOptions {
  readonly now?: string;
  readonly database?: string;
  readonly country?: string;
  /** beside lines */
  readonly networks?: readonly string[];
  /** another knowledge folder than the shipped one */
  readonly knowledge?: string;
}

export async function openTalk({ now = "2026-11-25T18:00:00Z", database = ":memory:", networks = [], country, knowledge }: TalkOptions = {}): Promise<Talk> {
  const sent: { outgoing: Outgoing; reader: Reader }[] = [];
  const core: Core = await openCore({
    database, ...(knowledge ? { knowledge } : {}), settings: { timezone: "UTC", locale: "en-GB", ...(country ? { country } : {}) }, windows_ms: {}, log: silent, ticking: false, stands_at_ms: Date.parse(now),
    outlets: ["lines", ...networks].map((network) => ({ network, send: async (outgoing, reader) => { sent.push({ outgoing, reader }); return { sent: true, native_id: null }; } })),
  });
  const render = renderer(core.texts);
  const usual: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
  let count = 0;
  async function put(line: Record<string, unknown>, { moderates, network, whispers, picture, picture_missing }: Said = {}): Promise<Written> {
    const parsed = parseLine(JSON.stringify(line), `test:${count++}`, core.now());
    if (parsed.kind !== "message") throw new Error(JSON.stringify(parsed));
    const { answer, facts } = await core.receive({
      ...parsed.message,
      ...(network === undefined ? {} : { identity: { ...parsed.message.identity, network } }),
      place: { ...parsed.message.place, ...(moderates === undefined ? {} : { moderates }), ...(network === undefined ? {} : { network, whispers: false }), ...(whispers === undefined ? {} : { whispers }) },
      ...(picture ? { picture } : {}),
      ...(picture_missing ? { picture_missing } : {}),
    });
    return write(answer, render, readerOf(facts, usual));
  }
  return {
    render,
    say: (person, text, room = "private", more = {}) => put({ person, room, text }, more),
    choose: (person, choose, room = "private", more = {}) => put({ person, room, choose }, more),
    records: (person, records, more = {}) => put({ person, room: "private", records }, more),
    async advance(duration) {
      sent.length = 0;
      await core.advance(Temporal.Duration.from(duration).total({ unit: "milliseconds", relativeTo: "2026-01-01" }));
      return sent.map(({ outgoing, reader }) => ({ at: new Date(outgoing.due_at_ms).toISOString(), network: outgoing.network, place: outgoing.network_place_id, ...write(outgoing.answer, render, reader) }));
    },
    kept: (person, network = "lines") => core.exportPerson(network, person),
    now: () => core.now(),
    close: () => core.close(),
  };
}
