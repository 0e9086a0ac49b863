/** Matrix, encrypted rooms included: connects, keeps its identity and keys through everything, and answers each message once. */
import { HttpApiEvent, type MatrixClient, MatrixError, Method, type Room } from "matrix-js-sdk";
import type { Adapter, Core } from "../adapter.ts";
import { labels } from "../outline.ts";
import { budget } from "./budget.ts";
import { makeClient, quiet } from "./client.ts";
import { keyRing, restoreKeys, setUpKeys } from "./crypto.ts";
import { intake } from "./intake.ts";
import { isInvited } from "./invites.ts";
import { login } from "./login.ts";
import type { MatrixOptions } from "./options.ts";
import { isOutage, Later, pause, poster, type Post, Refused, txnOf } from "./post.ts";
import { isEncrypted, isPrivate, NETWORK } from "./rooms.ts";
import { type ShowDeps, show } from "./show.ts";
import { type File, openFile } from "./store/file.ts";
import { openImage } from "./store/image.ts";
import { guarded } from "./store/guard.ts";
import { type Rows, rows as rowsIn } from "./store/rows.ts";
import { tails as newTails } from "./tails.ts";
import { type Talk, talk as newTalk } from "./talk.ts";
import { sentence } from "./words.ts";

export { NETWORK } from "./rooms.ts";
export { CannotStart, type MatrixOptions } from "./options.ts";

/**
 * How long a second event under the same transaction id is dropped. The specification names no time; the reference homeserver keeps them
 * 24 hours (`_cleanup_old_transaction_ids` of matrix-synapse 1.163.2).
 */
export const WINDOW_MS = 23 * 3_600_000;

const BUDGET = { most: 20, in_ms: 60_000 };
const SAME = { same: 4, same_in_ms: 10 * 60_000 };
const STOP_MS = 5_000;
const TIDY_MS = 6 * 3_600_000;

interface Running {
  readonly client: MatrixClient;
  readonly file: File;
  readonly rows: Rows;
  readonly talk: Talk;
  readonly post: Post;
  readonly deps: ShowDeps;
  readonly tidying: NodeJS.Timeout;
}

export function matrix(options: MatrixOptions): Adapter {
  const { log, now } = options;
  const stopping = new AbortController();
  const stopped = stopping.signal;
  const tails = newTails();
  let running: Running | null = null;
  let broken = false;
  const own = labels({ render: options.render, reader: options.reader });

  function onBroken(error: unknown): void {
    if (broken) return;
    broken = true;
    stopping.abort();
    log.error({ why: String(error) }, "the Matrix store cannot be written any more; ending at once, before memory and disk drift apart");
    options.onBroken(error);
  }

  /** @throws what is no outage; else waits until the homeserver is back */
  async function throughOutages<T>(what: string, work: () => Promise<T>): Promise<T> {
    for (let tries = 0; ; tries++) {
      try {
        return await work();
      } catch (error) {
        const wait_ms = error instanceof MatrixError && error.httpStatus === 429 ? (error.getRetryAfterMs() ?? 1_000) : isOutage(error) ? Math.min(30_000, 500 * 2 ** tries) : null;
        if (wait_ms === null || stopped.aborted) throw error;
        log.warn({ why: String(error), wait_ms }, `${what}: the homeserver does not answer, will try again`);
        await pause(wait_ms, stopped);
      }
    }
  }

  async function start(core: Core): Promise<void> {
    const file = openFile(options.database);
    const rows = guarded(rowsIn(file), onBroken);
    const factory = await openImage(file, onBroken);
    const logger = quiet(log);
    const credentials = await throughOutages("log in", () => login(options, rows, logger));
    const ring = keyRing();
    const client = await makeClient({ homeserver: options.homeserver, credentials, factory, ring, logger });
    const post = poster({ client, rows, now, log, stopping: stopped });
    const deps: ShowDeps = { client, post, rows, render: options.render, now, log, ...(options.draw ? { draw: options.draw } : {}) };
    const talk = newTalk({ ...deps, core, rows, tails, options, stopping: stopped, budget: budget({ ...BUDGET, ...SAME, ...options.budget }) });
    const tidying = setInterval(() => rows.tidy(now()), TIDY_MS);
    tidying.unref();
    running = { client, file, rows, talk, post, deps, tidying };

    const ready = listen(running, async () => {
      await throughOutages("set up keys", () => setUpKeys(client, ring, options));
      const restored = `restored ${credentials.device_id}`;
      if (rows.account(restored) !== null) return;
      const { found, restored: got } = await throughOutages("restore keys", () => restoreKeys(client));
      log.info({ found, restored: got }, "room keys restored from the backup");
      rows.setAccount(restored, String(now()));
    });
    await client.startClient({ lazyLoadMembers: true, initialSyncLimit: 20 });
    try {
      await ready;
    } catch (error) {
      client.stopClient();
      throw error;
    }
    log.info({ user: credentials.user_id, device: credentials.device_id, rooms: client.getRooms().length }, "Matrix is connected");
  }

  function listen({ client, rows, talk, post }: Running, prepare: () => Promise<void>): Promise<void> {
    const me = client.getSafeUserId();
    const joining = new Set<string>();
    const joined = new Set<string>();
    client.on(HttpApiEvent.SessionLoggedOut, () => {
      log.error({}, "the homeserver has ended this session; start again with a password or a new token");
      options.onFatal?.();
    });

    async function answerInvitation(room: Room): Promise<void> {
      const room_id = room.roomId;
      const inviter = room.getMember(me)?.events.member?.getSender() ?? null;
      if (isInvited(options.invites ?? [], me, room_id, inviter)) {
        joined.add(room_id);
        return void (await client.joinRoom(room_id));
      }
      log.info({ room_id, inviter }, "an invitation was refused");
      await client.http.authedRequest(Method.Post, `/rooms/${encodeURIComponent(room_id)}/leave`, undefined, { reason: own("matrix-not-invited") });
    }

    async function greet(room: Room): Promise<void> {
      if (!options.greeting || !joined.has(room.roomId) || !(await isEncrypted(client, room))) return;
      await post.until(room.roomId, "m.room.message", sentence(options.render(options.greeting, options.reader)), txnOf(room.roomId, "greeting"));
    }

    return intake({
      client, rows, talk, tails, log, now, throughOutages, prepare,
      onInvite(room) {
        if (joining.has(room.roomId)) return;
        joining.add(room.roomId);
        throughOutages("answer an invitation", () => answerInvitation(room))
          .catch((error: unknown) => log.warn({ room_id: room.roomId, why: String(error) }, "an invitation could not be answered"))
          .finally(() => joining.delete(room.roomId));
      },
      onEntered(room, said) {
        if (said === 0) greet(room).catch((error: unknown) => log.info({ room_id: room.roomId, why: String(error) }, "a greeting could not be sent"));
      },
      onLeft: rows.forgetRoom,
    });
  }

  return {
    network: NETWORK,
    start,

    async stop() {
      stopping.abort();
      if (!running) return;
      const { client, file, talk, tidying } = running;
      running = null;
      clearInterval(tidying);
      await Promise.race([talk.idle(), new Promise((resolve) => setTimeout(resolve, STOP_MS).unref())]);
      if (!broken) await client.store.save(true);
      client.stopClient();
      await new Promise((resolve) => setImmediate(resolve));
      file.close();
    },

    async send(outgoing, reader) {
      if (!running) return { sent: false, retry: true, why: "not connected yet" };
      const { client, deps, rows } = running;
      const { answer, key, network_place_id: room_id } = outgoing;
      const room = client.getRoom(room_id);
      if (!room) return { sent: false, retry: true, why: "the room is not known yet", after_ms: 5_000 };
      if (room.getMyMembership() !== "join") return { sent: false, retry: false, why: "no longer in the room" };
      const is_encrypted = await isEncrypted(client, room);
      if (!is_encrypted && (isPrivate(room) || options.unencrypted !== "groups")) return { sent: false, retry: false, why: "the room is not encrypted" };
      const others = isPrivate(room) ? room.getMembers().filter(({ userId, membership }) => userId !== client.getSafeUserId() && membership === "join") : [];
      const person = others[0]?.userId ?? (answer.live === undefined ? null : rows.live(room_id, answer.live)?.person) ?? "";
      try {
        const state = rows.talk(room_id, person);
        const { event_ids, state: next } = await show(deps, {
          answer, reader, room_id, person, key, is_encrypted, state,
          after: rows.lastSeq(), in_place: answer.in_place === true, relation: null, call: answer.in_place !== true, maybe_repeat: outgoing.maybe_repeat, once: true,
        });
        rows.setTalk(room_id, person, next);
        return { sent: true, native_id: event_ids[0] ?? null };
      } catch (error) {
        if (error instanceof Refused) return { sent: false, retry: false, why: error.message };
        if (error instanceof Later) return { sent: false, retry: true, after_ms: error.after_ms, why: error.message };
        throw error;
      }
    },

    async lookUp(outgoing) {
      if (!running) return null;
      // our own events come back with their transaction ids, also those sent before a crash
      const native_id = running.rows.sent(txnOf(outgoing.key, 0));
      if (native_id !== null) return { sent: true, native_id };
      const row = running.rows.room(outgoing.network_place_id);
      return row && !row.gap && running.client.isInitialSyncComplete() ? { sent: false, retry: true, why: "it never arrived" } : null;
    },
  };
}
