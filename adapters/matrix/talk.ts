/** One event after another, from what came in to what is shown for it. Danger is looked for as soon as an event can be read. */
import type { MatrixClient } from "matrix-js-sdk";
import { turns } from "../../src/delivery/turns.ts";
import type { Message } from "../../src/message.ts";
import type { Core, Reply } from "../adapter.ts";
import { beginForm, fillIn, type FormTalk, formQuestion, saysOneOf } from "../forms.ts";
import { type Label, labels } from "../outline.ts";
import { parse as parseTyped } from "../terminal/parse.ts";
import type { Budget } from "./budget.ts";
import { download } from "./download.ts";
import type { MatrixOptions } from "./options.ts";
import { look, type LookDeps, type Looked, type Said } from "./look.ts";
import { numberOf, type Relation } from "./parse.ts";
import { pause, type Post, Refused, Stopped, txnOf } from "./post.ts";
import { isPrivate, moderates } from "./rooms.ts";
import { type ShowDeps, type Shown, show } from "./show.ts";
import type { Pending, Rows, TalkState } from "./store/rows.ts";
import type { Tails } from "./tails.ts";
import { formLabel, question, sentence } from "./words.ts";

export interface TalkDeps extends ShowDeps {
  readonly client: MatrixClient;
  readonly core: Core;
  readonly rows: Rows;
  readonly post: Post;
  readonly budget: Budget;
  readonly tails: Tails;
  readonly options: Pick<MatrixOptions, "reader" | "unencrypted" | "log" | "now">;
  readonly stopping: AbortSignal;
}

export interface Talk {
  /** Take an event up; it is worked when those before it in its room are. */
  take(pending: Pending): void;
  /** resolves when all that was taken up is worked, or left for the next start */
  idle(): Promise<void>;
}

/** Waits before a message without its key is tried again. */
const RETRY_MS = [2_000, 5_000, 15_000, 30_000, 60_000, 120_000, 300_000, 600_000, 1_800_000];
/** After so many tries the person is told. */
const TELL_AFTER = 3;
/** Waits before a message that the records did not take is tried again. */
const AGAIN_MS = [1_000, 4_000, 10_000];
const TYPING_AFTER_MS = 250;
const TYPING_MS = 30_000;
/** The same remark in one room at most this often. */
const REMARK_MS = 10 * 60_000;

export function talk(deps: TalkDeps): Talk {
  const { client, core, rows, post, budget, options, stopping, render, log, now } = deps;
  const inTurn = turns();
  const running = new Set<Promise<unknown>>();
  const remarks = new Map<string, number>();
  const own: Label = labels({ render, reader: options.reader });
  const lookDeps: LookDeps = { client, core, rows, now, usual_prefix: own("matrix-prefix") };

  function remark(said: Pick<Said, "room" | "pending">, id: string, relation: object = {}): Promise<void> {
    const key = `${said.room.roomId}\n${id}`;
    if ((remarks.get(key) ?? Number.NEGATIVE_INFINITY) > now() - REMARK_MS) return Promise.resolve();
    remarks.set(key, now());
    return say(said, own(id), id, relation);
  }

  async function say({ room, pending }: Pick<Said, "room" | "pending">, words: string, part: string, more: object = {}): Promise<void> {
    if (words === "") return;
    await post.until(room.roomId, "m.room.message", { ...sentence(words), ...more }, txnOf(pending.event.event_id, part));
  }

  const relationFor = ({ parsed, pending, message }: Said): (Relation & { event_id: string }) | null => {
    const { thread, reply_to } = parsed.kind === "said" || parsed.kind === "other" ? parsed : { thread: null, reply_to: null };
    return thread !== null || (message.place.kind === "group" && parsed.kind !== "reaction") ? { thread, reply_to, event_id: pending.event.event_id } : null;
  };

  function showReply(said: Said, reply: Reply, state: TalkState, part: string): Promise<Shown> {
    const { room, pending, parsed, message } = said;
    const live = reply.answer.live === undefined ? null : rows.live(room.roomId, reply.answer.live);
    const at = parsed.kind === "reaction" ? parsed.to : deps.tails.before(room.roomId, pending.event.event_id);
    return show(deps, {
      ...reply,
      room_id: room.roomId,
      person: message.identity.id,
      key: `${pending.event.event_id}\n${part}`,
      is_encrypted: message.place.encrypted ?? false,
      after: pending.seq,
      state,
      in_place: live !== null && at !== null && live.event_ids.includes(at),
      relation: relationFor(said),
      once: false,
    });
  }

  const keep = (said: Said, state: TalkState): void => rows.setTalk(said.room.roomId, said.message.identity.id, state);

  async function work(said: Said, warned: Shown | null): Promise<void> {
    const { room, pending, parsed, message, urgent } = said;
    const before = rows.talk(room.roomId, message.identity.id);
    if (warned) keep(said, { open: warned.state.open, form: null, paused: before.form ?? before.paused });
    if (parsed.kind === "edit") return;
    if (parsed.kind === "reaction") return pressed(said, before);
    if (!parsed.addressed) return;
    if (!budget.take(`${room.roomId}\n${message.identity.id}`, parsed.kind === "said" ? parsed.text : "", pending.event.origin_server_ts)) {
      return urgent ? undefined : remark(said, "matrix-too-much");
    }
    void client.sendReadReceipt(said.event).catch(() => {});
    if (isClosed(message)) return urgent ? undefined : remark(said, "matrix-unencrypted");
    if (parsed.kind === "other") return other(said);
    const state = rows.talk(room.roomId, message.identity.id);
    if (urgent) return receive(said, { ...message, text: parsed.text });
    if (state.form) return answerForm(said, state, state.form, parsed.text);
    if (message.place.kind === "group" && (await setPrefix(said, parsed.text))) return;
    const typed = parseTyped(parsed.text, state.open.filter((one) => one.after < pending.seq).flatMap((one) => one.numbered));
    if (typed.means === "form") return openForm(said, state, typed.id);
    await receive(said, typed.means === "choice" ? { ...message, choice: typed.choice } : { ...message, text: typed.text });
  }

  /** Nothing about a person goes where the homeserver can read it. */
  const isClosed = ({ place }: Message): boolean =>
    place.encrypted === false && !(place.kind === "group" && options.unencrypted === "groups");

  async function pressed(said: Said, state: TalkState): Promise<void> {
    const { room, parsed, message } = said;
    if (parsed.kind !== "reaction") return;
    const number = numberOf(parsed.key);
    const shown = rows.shown(parsed.to);
    if (number === null || !shown || shown.room_id !== room.roomId || !["", message.identity.id].includes(shown.person)) return;
    const chosen = shown.numbered.find((one) => one.number === number);
    if (!chosen || isClosed(message)) return;
    if (chosen.opens === "form") return openForm(said, state, chosen.id);
    await receive(said, { ...message, choice: chosen.id });
  }

  async function other(said: Said): Promise<void> {
    const content = said.event.getContent<{ msgtype?: string; body?: string; filename?: string }>();
    if (content.msgtype !== "m.image") return say(said, own("matrix-only-words"), "only-words");
    const picture = await download(client, content);
    const caption = content.filename !== undefined && content.filename !== content.body ? content.body : undefined;
    const came = typeof picture === "string" ? { picture_missing: picture } : { picture };
    await receive(said, { ...said.message, ...came, ...(caption ? { text: caption } : {}) });
  }

  async function setPrefix(said: Said, words: string): Promise<boolean> {
    const [first = "", second = "", ...rest] = words.split(/\s+/);
    if (!saysOneOf(first, own("matrix-words-prefix"))) return false;
    const sender = said.message.identity.id;
    if (!moderates(said.room, sender)) await say(said, own("matrix-prefix-right"), "prefix");
    else if (second === "" || second.length > 12 || rest.length > 0) await say(said, own("matrix-prefix-wrong"), "prefix");
    else {
      rows.setPrefix(said.room.roomId, second);
      await say(said, own("matrix-prefix-set", { prefix: second }), "prefix");
    }
    return true;
  }

  async function receive(said: Said, message: Message): Promise<void> {
    const { urgent, room } = said;
    const stop = typing(room.roomId);
    try {
      const reply = await answered(urgent ? { ...message, emergency_answered: urgent.answer.topic } : message);
      if (!reply) return urgent ? undefined : await say(said, own("failed"), "failed");
      if (urgent && reply.answer.emergency && reply.answer.topic === urgent.answer.topic) return;
      const { state } = await showReply(said, reply, rows.talk(room.roomId, message.identity.id), "answer");
      keep(said, state);
    } finally {
      stop();
    }
  }

  async function answered(message: Message): Promise<Reply | null> {
    for (const wait_ms of [...AGAIN_MS, null]) {
      try {
        return await core.receive(message);
      } catch (error) {
        log.error({ why: String(error), native_id: message.native_id }, "a message could not be answered");
        if (wait_ms === null) return null;
        await pause(wait_ms, stopping);
        if (stopping.aborted) throw new Stopped();
      }
    }
    return null;
  }

  function typing(room_id: string): () => void {
    let on = false;
    const timer = setTimeout(() => {
      on = true;
      void client.sendTyping(room_id, true, TYPING_MS).catch(() => {});
    }, TYPING_AFTER_MS);
    return () => {
      clearTimeout(timer);
      if (on) void client.sendTyping(room_id, false, 0).catch(() => {});
    };
  }

  async function openForm(said: Said, state: TalkState, id: string): Promise<void> {
    const form = state.open.flatMap((one) => one.forms).find((one) => one.id === id);
    if (form) await askForm(said, state, state.paused?.form.id === id ? { ...state.paused, form } : beginForm(form), "");
  }

  async function askForm(said: Said, state: TalkState, form: FormTalk, before: string): Promise<void> {
    const label = formLabel(own);
    const asked = formQuestion(form, label);
    if (asked) {
      await post.until(said.room.roomId, "m.room.message", { ...question(asked, before, label), ...replying(said) }, txnOf(said.pending.event.event_id, "form"));
    }
    keep(said, { ...state, form, paused: null });
  }

  const replying = (said: Said): object => {
    const relation = relationFor(said);
    if (!relation) return {};
    const in_reply_to = { "m.in_reply_to": { event_id: relation.event_id } };
    return { "m.relates_to": relation.thread === null ? in_reply_to : { rel_type: "m.thread", event_id: relation.thread, is_falling_back: true, ...in_reply_to } };
  };

  async function answerForm(said: Said, state: TalkState, form: FormTalk, words: string): Promise<void> {
    const step = fillIn(form, saysOneOf(words, own("matrix-words-skip")) ? "" : words, own);
    if (step.step !== "done") return askForm(said, state, step.talk, step.step === "wrong" ? step.sentence : "");
    if (Object.keys(step.values).length === 0) {
      await say(said, own("form-empty"), "form");
    } else {
      await receive(said, { ...said.message, form: { id: step.id, values: step.values } });
    }
    keep(said, { ...rows.talk(said.room.roomId, said.message.identity.id), form: null, paused: null });
  }

  async function through(pending: Pending, looked: Promise<Looked>, warned: Promise<Shown | null>, tries: number): Promise<void> {
    const { event_id, room_id } = pending.event;
    try {
      const seen = await looked;
      if (seen === "unreadable" || seen === "later") return await retry(pending, seen, tries);
      if (seen !== "nothing") await work(seen, await warned);
      rows.done(event_id);
    } catch (error) {
      if (error instanceof Stopped || stopping.aborted) return;
      if (error instanceof Refused) {
        log.warn({ room_id, event_id, why: error.message }, "an answer was refused by the homeserver");
        rows.done(event_id);
      } else {
        log.error({ room_id, event_id, why: error instanceof Error ? (error.stack ?? error.message) : String(error) }, "an event could not be worked");
        await retry(pending, "later", tries);
      }
    }
  }

  async function retry(pending: Pending, why: "unreadable" | "later", tries: number): Promise<void> {
    const { event_id, room_id } = pending.event;
    const wait_ms = RETRY_MS[tries];
    const room = client.getRoom(room_id);
    if (why === "unreadable" && room && (tries === TELL_AFTER || wait_ms === undefined) && isPrivate(room)) {
      await remark({ pending, room }, "matrix-unreadable").catch(() => {});
    }
    if (wait_ms === undefined) {
      log.warn({ room_id, event_id, why }, "an event was given up");
      return rows.done(event_id);
    }
    const timer = setTimeout(() => !stopping.aborted && run(pending, tries + 1), wait_ms);
    timer.unref();
    stopping.addEventListener("abort", () => clearTimeout(timer), { once: true });
  }

  function run(pending: Pending, tries: number): void {
    const looked = look(lookDeps, pending);
    // what cannot wait for its turn
    const warned = looked.then((seen) =>
      typeof seen === "object" && seen.urgent
        ? showReply(seen, seen.urgent, rows.talk(seen.room.roomId, seen.message.identity.id), "urgent")
        : null,
    );
    warned.catch(() => {});
    const all: Promise<unknown> = inTurn(pending.event.room_id, () => through(pending, looked, warned, tries)).finally(() => running.delete(all));
    running.add(all);
  }

  return {
    take: (pending) => run(pending, 0),
    async idle() {
      while (running.size > 0) await Promise.all(running);
    },
  };
}
