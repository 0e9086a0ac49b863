/** An answer in a room: its notices and pictures, or the live one brought up to date, and a key below it for each choice. */
import type { MatrixClient } from "matrix-js-sdk";
import type { Answer } from "../../src/answer.ts";
import type { Log } from "../../src/delivery/log.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import { type Drawn, withFiles } from "../drawn.ts";
import { outline } from "../outline.ts";
import { firstNumber } from "../terminal/parse.ts";
import type { Event, Notice } from "./api.ts";
import { type Change, liveChanges } from "./live.ts";
import { keyFor, type Relation } from "./parse.ts";
import { type Post, Refused, txnOf } from "./post.ts";
import { renderMatrix } from "./render.ts";
import type { OpenChoices, Rows, TalkState } from "./store/rows.ts";
import { upload } from "./upload.ts";

export interface Showing {
  readonly answer: Answer;
  readonly reader: Reader;
  readonly room_id: string;
  readonly person: string;
  /** what caused it: the transaction ids are made of it */
  readonly key: string;
  readonly is_encrypted: boolean;
  /** number of the event that it answers */
  readonly after: number;
  readonly state: TalkState;
  /** the live answer on the screen may be edited: it is the last thing said, or was pressed itself */
  readonly in_place: boolean;
  readonly relation: (Relation & { readonly event_id: string }) | null;
  /** call the person, so that their client rings */
  readonly call?: boolean;
  readonly maybe_repeat?: boolean;
  /** one try for each event, else until they are sent */
  readonly once: boolean;
}

export interface Shown {
  readonly event_ids: readonly string[];
  readonly state: TalkState;
}

export interface ShowDeps {
  readonly client: MatrixClient;
  readonly post: Post;
  readonly rows: Pick<Rows, "live" | "setLive" | "setShown">;
  readonly render: Renderer;
  readonly draw?: Drawn;
  readonly now: () => number;
  readonly log: Log;
}

/**
 * On an edited message the numbers run on: a key pressed late, or by way of correction, never means another choice than the one it stood
 * for. Past this number the answer is sent anew, and counts from one.
 */
const MOST_NUMBER = 40;
/** More choices than this are typed: a row of keys would be hard to read, and each costs a request. */
const MOST_CHOICES = 6;

/** @throws Refused when nothing of it can be sent; with `once` also what kept one event from being sent */
export async function show(deps: ShowDeps, showing: Showing): Promise<Shown> {
  const { render, rows, post } = deps;
  const { reader, room_id, person, key, state } = showing;
  const { answer } = showing;
  const drawn = await withFiles(answer, reader, deps.draw, (error) => deps.log.warn({ why: String(error) }, "a picture could not be drawn; its words stand for it"));
  const before = answer.live === undefined || answer.emergency ? null : rows.live(room_id, answer.live);
  const kept = state.open.filter((one) => one.after >= showing.after || (one.live !== undefined && !answer.emergency));
  const offered = outline(drawn, { render, reader }).numbered.length;
  const next = before && showing.in_place ? Math.max(firstNumber(asOpen(kept), answer), before.used + 1) : 0;
  const isEdit = before !== null && showing.in_place && next + offered - 1 <= MOST_NUMBER;
  const first_number = isEdit ? next : firstNumber(asOpen(kept.filter((one) => one.live === undefined || one.live !== answer.live)), answer);
  const options = { render, reader, first_number, ...(showing.maybe_repeat ? { maybe_repeat: true } : {}) };
  const { numbered, forms } = outline(drawn, options);
  const events = renderMatrix(drawn, options);
  const changes: Change[] = isEdit ? liveChanges(before.event_ids, events) : events.map((event) => ({ change: "send", event }));

  const sent: string[] = [];
  const notices: string[] = isEdit ? before.event_ids.slice(0, events.filter((event) => event.kind === "notice").length) : [];
  const send = (content: object, at: number | string): Promise<string> =>
    (showing.once ? post.once : post.until)(room_id, "m.room.message", content, txnOf(key, at));
  for (const [at, change] of changes.entries()) {
    if (change.change === "redact") await post.redact(room_id, change.event_id, txnOf(key, at));
    else if (change.change === "edit") sent.push(await send(change.content, at));
    else {
      const content = dressed(await contentOf(deps, change.event, showing), showing, at === 0);
      const event_id = await send(content, at);
      sent.push(event_id);
      if (change.event.kind === "notice") notices.push(event_id);
    }
  }

  const bearer = notices.at(-1);
  if (bearer !== undefined) {
    if (numbered.length > 0) {
      rows.setShown(bearer, { room_id, person: answer.audience === "place" ? "" : person, numbered, ...(answer.live ? { live: answer.live } : {}) }, deps.now());
    }
    const used = Math.max(isEdit ? before.used : 0, ...numbered.map(({ number }) => number));
    if (answer.live !== undefined) rows.setLive(room_id, answer.live, { event_ids: notices, used, person, keys: [] });
    const keys = numbered.length <= MOST_CHOICES ? await offerKeys(deps, room_id, bearer, numbered.map(({ number }) => number), key) : [];
    if (answer.live !== undefined) rows.setLive(room_id, answer.live, { event_ids: notices, used, person, keys });
    for (const [at, old] of (isEdit ? before.keys : []).entries()) await post.redact(room_id, old, txnOf(key, "old key", at));
  }
  const others = kept.filter((one) => one.live === undefined || one.live !== answer.live);
  const mine: OpenChoices[] = numbered.length > 0 ? [{ after: showing.after, numbered, forms, ...(answer.live ? { live: answer.live } : {}) }] : [];
  return { event_ids: sent.length > 0 ? sent : notices, state: { ...state, open: [...others, ...mine] } };
}

/** The choices in the shape in which numbers are given out. */
export const asOpen = (open: readonly OpenChoices[]) =>
  open.map(({ after, live, numbered, forms }) => ({
    after, outline: { emergency: false, pieces: [], urgent: 0, numbered, forms }, ...(live === undefined ? {} : { live }),
  }));

async function offerKeys({ post, log }: ShowDeps, room_id: string, event_id: string, numbers: readonly number[], key: string): Promise<string[]> {
  const keys: string[] = [];
  for (const number of numbers) {
    const content = { "m.relates_to": { rel_type: "m.annotation", event_id, key: keyFor(number) } };
    try {
      keys.push(await post.once(room_id, "m.reaction", content, txnOf(key, "key", number)));
    } catch (error) {
      // a number can always be typed
      if (error instanceof Refused) continue;
      log.info({ why: String(error) }, "keys below an answer could not be offered");
      break;
    }
  }
  return keys;
}

/** A notice rings nowhere (the specification's default push rules suppress it), so what calls somebody is a text that mentions them. */
function dressed(content: object, { relation, person, call }: Showing, isFirst: boolean): object {
  const called = isFirst && call ? { msgtype: "m.text", ...(person ? { "m.mentions": { user_ids: [person] } } : {}) } : {};
  if (!relation) return { ...content, ...called };
  const { thread, event_id } = relation;
  const in_reply_to = { "m.in_reply_to": { event_id } };
  if (thread !== null) return { ...content, ...called, "m.relates_to": { rel_type: "m.thread", event_id: thread, is_falling_back: true, ...in_reply_to } };
  return isFirst ? { ...content, ...called, "m.relates_to": in_reply_to } : { ...content, ...called };
}

async function contentOf({ client, log }: ShowDeps, event: Event, { is_encrypted }: Showing): Promise<object> {
  if (event.kind === "notice") return event.content;
  try {
    return await upload(client, event, is_encrypted);
  } catch (error) {
    log.warn({ why: String(error) }, "a picture could not be uploaded; its words stand for it");
    const words: Pick<Notice, "msgtype" | "body" | "m.mentions"> = { msgtype: "m.notice", body: event.content.body, "m.mentions": {} };
    return words;
  }
}
