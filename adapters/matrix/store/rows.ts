/** What the adapter itself keeps, one small function for each thing asked of it. Every change is on the disk when the function returns. */
import type { FormTalk } from "../../forms.ts";
import type { FormPiece, Numbered } from "../../outline.ts";
import type { File } from "./file.ts";

/** How long it is known what came in and what was sent. Older events are not worked any more: they may have been. */
export const KEPT_MS = 30 * 86_400_000;

/** An event as the homeserver sent it, still encrypted where it was. */
export interface RawEvent {
  readonly event_id: string;
  readonly room_id: string;
  readonly sender: string;
  readonly type: string;
  readonly state_key?: string;
  readonly origin_server_ts: number;
  readonly content: Readonly<Record<string, unknown>>;
  readonly unsigned?: Readonly<Record<string, unknown>>;
}

export interface Pending {
  readonly seq: number;
  readonly event: RawEvent;
}

export interface RoomRow {
  /** everything up to this event has come in */
  readonly mark: string | null;
  /** something after the mark may be missing */
  readonly gap: boolean;
  /** what a message in a group starts with when it is meant for us */
  readonly prefix: string | null;
}

/** The choices of one answer that can still be taken. */
export interface OpenChoices {
  /** number of the event after which it was shown: earlier ones cannot mean it */
  readonly after: number;
  readonly live?: string;
  readonly numbered: readonly Numbered[];
  readonly forms: readonly FormPiece[];
}
/** Where the talk with one person in one room stands. */
export interface TalkState {
  readonly open: readonly OpenChoices[];
  readonly form: FormTalk | null;
  /** a form that danger broke off */
  readonly paused: FormTalk | null;
}

/** What a reaction to one event can mean, and to whom. */
export interface ShownChoices {
  readonly person: string;
  readonly room_id: string;
  readonly numbered: readonly Numbered[];
  readonly live?: string;
}
export interface Live {
  readonly event_ids: readonly string[];
  /** the highest number that stood on it so far: a reaction is made once */
  readonly used: number;
  /** our own reactions below it, by which it is answered */
  readonly keys: readonly string[];
  /** whose it is */
  readonly person: string;
}

export type Rows = ReturnType<typeof rows>;

export function rows(file: File) {
  const one = <T>(sql: string) => {
    const statement = file.prepare(sql);
    return (...values: unknown[]): T | undefined => statement.get(...values) as T | undefined;
  };
  const run = (sql: string) => {
    const statement = file.prepare(sql);
    return (...values: unknown[]): number => statement.run(...values).changes;
  };

  const account = one<{ value: string }>("SELECT value FROM account WHERE name = ?");
  const setAccount = run("INSERT INTO account (name, value) VALUES (?, ?) ON CONFLICT DO UPDATE SET value = excluded.value");
  const lastSeq = one<{ seq: number }>("SELECT COALESCE(MAX(seq), 0) AS seq FROM inbox");
  const insert = run("INSERT INTO inbox (event_id, room_id, seq, event, came_at_ms, done) VALUES (?, ?, ?, ?, ?, 0) ON CONFLICT DO NOTHING");
  const know = run("INSERT INTO inbox (event_id, room_id, seq, came_at_ms, done) VALUES (?, ?, ?, ?, 1) ON CONFLICT DO NOTHING");
  const pending = file.prepare("SELECT seq, event FROM inbox WHERE done = 0 ORDER BY came_at_ms, seq");
  const done = run("UPDATE inbox SET done = 1, event = NULL WHERE event_id = ?");
  const known = one<{ done: number }>("SELECT done FROM inbox WHERE event_id = ?");
  const room = one<{ mark: string | null; gap: number; prefix: string | null }>("SELECT mark, gap, prefix FROM room WHERE room_id = ?");
  const newRoom = run("INSERT INTO room (room_id, gap) VALUES (?, 1) ON CONFLICT DO NOTHING");
  const setMark = run("UPDATE room SET mark = ? WHERE room_id = ? AND gap = 0");
  const openGap = run("UPDATE room SET gap = 1 WHERE room_id = ?");
  const closeGap = run("UPDATE room SET gap = 0, mark = COALESCE(?, mark) WHERE room_id = ?");
  const setPrefix = run("UPDATE room SET prefix = ? WHERE room_id = ?");
  const gaps = file.prepare("SELECT room_id FROM room WHERE gap = 1").pluck();
  const sent = one<{ event_id: string }>("SELECT event_id FROM sent WHERE txn = ?");
  const setSent = run("INSERT INTO sent (txn, event_id, room_id, at_ms) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING");
  const ours = one<{ txn: string }>("SELECT txn FROM sent WHERE event_id = ?");
  const shown = one<{ room_id: string; person: string; choices: string }>("SELECT room_id, person, choices FROM shown WHERE event_id = ?");
  const setShown = run(
    "INSERT INTO shown (event_id, room_id, person, choices, at_ms) VALUES (?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET choices = excluded.choices, person = excluded.person, at_ms = excluded.at_ms",
  );
  const talk = one<{ state: string }>("SELECT state FROM talk WHERE room_id = ? AND person = ?");
  const setTalk = run("INSERT INTO talk (room_id, person, state) VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET state = excluded.state");
  const live = one<{ event_ids: string }>("SELECT event_ids FROM live WHERE room_id = ? AND live = ?");
  const setLive = run("INSERT INTO live (room_id, live, event_ids) VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET event_ids = excluded.event_ids");
  const tidy = [
    "DELETE FROM inbox WHERE done = 1 AND came_at_ms < ?",
    "DELETE FROM sent WHERE at_ms < ?",
    "DELETE FROM shown WHERE at_ms < ?",
  ].map(run);
  const leave = ["room", "talk", "live", "shown"].map((table) => run(`DELETE FROM ${table} WHERE room_id = ?`));

  let seq = lastSeq()?.seq ?? 0;
  const take = (event: RawEvent, now_ms: number): boolean =>
    insert(event.event_id, event.room_id, ++seq, JSON.stringify(event), Math.min(event.origin_server_ts, now_ms)) > 0;

  return {
    account: (name: string): string | null => account(name)?.value ?? null,
    setAccount: (name: string, value: string): void => void setAccount(name, value),
    lastSeq: (): number => seq,

    /** A live event: in, and the mark moved on, unless something before it is missing. False when it had come in before. */
    arrived: file.transaction((event: RawEvent, work: boolean, now_ms: number): number | null => {
      if (event.origin_server_ts < now_ms - KEPT_MS) return null;
      const fresh = work ? take(event, now_ms) : know(event.event_id, event.room_id, ++seq, Math.min(event.origin_server_ts, now_ms)) > 0;
      setMark(event.event_id, event.room_id);
      return fresh ? seq : null;
    }),
    /** What was found in a gap, oldest first, and the gap closed. */
    filled: file.transaction((room_id: string, found: readonly RawEvent[], newest: string | null, now_ms: number): void => {
      for (const event of found) take(event, now_ms);
      closeGap(newest, room_id);
    }),
    pending: (): Pending[] =>
      (pending.all() as { seq: number; event: string }[]).map(({ seq: number, event }) => ({ seq: number, event: JSON.parse(event) as RawEvent })),
    done: (event_id: string): void => void done(event_id),
    isDone: (event_id: string): boolean => known(event_id)?.done === 1,

    room: (room_id: string): RoomRow | null => {
      const found = room(room_id);
      return found ? { ...found, gap: found.gap === 1 } : null;
    },
    newRoom: (room_id: string): void => void newRoom(room_id),
    openGap: (room_id: string): void => void openGap(room_id),
    setPrefix: (room_id: string, prefix: string): void => void setPrefix(prefix, room_id),
    gaps: (): string[] => gaps.all() as string[],
    forgetRoom: file.transaction((room_id: string): void => {
      for (const remove of leave) remove(room_id);
    }),

    sent: (txn: string): string | null => sent(txn)?.event_id ?? null,
    setSent: (txn: string, event_id: string, room_id: string, now_ms: number): void => void setSent(txn, event_id, room_id, now_ms),
    isOurs: (event_id: string): boolean => ours(event_id) !== undefined,
    shown: (event_id: string): ShownChoices | null => {
      const found = shown(event_id);
      return found ? { room_id: found.room_id, person: found.person, ...(JSON.parse(found.choices) as Pick<ShownChoices, "numbered" | "live">) } : null;
    },
    setShown: (event_id: string, { room_id, person, ...choices }: ShownChoices, now_ms: number): void =>
      void setShown(event_id, room_id, person, JSON.stringify(choices), now_ms),
    talk: (room_id: string, person: string): TalkState => {
      const found = talk(room_id, person);
      return found ? (JSON.parse(found.state) as TalkState) : { open: [], form: null, paused: null };
    },
    setTalk: (room_id: string, person: string, state: TalkState): void => void setTalk(room_id, person, JSON.stringify(state)),
    live: (room_id: string, key: string): Live | null => {
      const found = live(room_id, key);
      return found ? (JSON.parse(found.event_ids) as Live) : null;
    },
    setLive: (room_id: string, key: string, value: Live): void => void setLive(room_id, key, JSON.stringify(value)),
    /** Forget what only guards against repeats. */
    tidy: (now_ms: number): void => tidy.forEach((remove) => remove(now_ms - KEPT_MS)),
    /** All in one, or nothing. */
    together: (work: () => void): void => file.transaction(work)(),
  };
}
