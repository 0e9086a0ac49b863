/** What comes in by sync: written down before anything is built on it, held back while something before it is missing, then handed on. */
import { ClientEvent, type MatrixClient, type MatrixEvent, type Room, RoomEvent, RoomStateEvent, SyncState } from "matrix-js-sdk";
import { inGroups } from "../../src/delivery/groups.ts";
import type { Log } from "../../src/delivery/log.ts";
import { fillGap, KINDS } from "./gaps.ts";
import type { Pending, RawEvent, Rows } from "./store/rows.ts";
import type { Tails } from "./tails.ts";
import type { Talk } from "./talk.ts";

export interface IntakeDeps {
  readonly client: MatrixClient;
  readonly rows: Rows;
  readonly talk: Talk;
  readonly tails: Tails;
  readonly log: Log;
  readonly now: () => number;
  /** repeats work until the homeserver answers */
  readonly throughOutages: <T>(what: string, work: () => Promise<T>) => Promise<T>;
  /** done after the first sync, when requests of the crypto are under way, and before anything is handed on */
  readonly prepare: () => Promise<void>;
  readonly onInvite: (room: Room) => void;
  /** a room is caught up for the first time, and so much was said before we came */
  readonly onEntered: (room: Room, said: number) => void;
  readonly onLeft: (room_id: string) => void;
}

const WORKED = new Set<string>(KINDS);
/** Rooms caught up at the same time. */
const ABREAST = 8;
/** A room that cannot be caught up is tried again after so long. */
const AGAIN_MS = 60_000;
const MOST_TAKEN = 10_000;

/** @returns resolves when everything from before the start is handed on */
export function intake(deps: IntakeDeps): Promise<void> {
  const { client, rows, talk, tails, log, now } = deps;
  const me = client.getSafeUserId();
  /** joined, and nothing known of them yet */
  const fresh = new Set<string>();
  const filling = new Set<string>();
  const taken = new Set<string>();
  let isReady = false;

  function take(pending: Pending): void {
    if (taken.has(pending.event.event_id)) return;
    if (taken.size > MOST_TAKEN) taken.clear();
    taken.add(pending.event.event_id);
    talk.take(pending);
  }

  client.on(RoomEvent.Timeline, (event: MatrixEvent, room: Room | undefined, toStart, removed, data) => {
    if (!room || toStart || removed || !data.liveEvent) return;
    const raw = { ...event.event, room_id: room.roomId } as RawEvent;
    const isOurs = raw.sender === me;
    const txn = raw.unsigned?.transaction_id;
    if (isOurs && typeof txn === "string") rows.setSent(txn, raw.event_id, room.roomId, now());
    if (!WORKED.has(raw.type) || !raw.event_id) return;
    if (raw.type !== "m.reaction" && relation(raw) !== "m.replace") tails.said(room.roomId, raw.event_id);
    const row = rows.room(room.roomId);
    if (!row) return void fresh.add(room.roomId);
    const seq = rows.arrived(raw, !isOurs, now());
    // what is not taken now lies in the inbox until the gap before it is closed
    if (seq !== null && !isOurs && isReady && !row.gap) take({ seq, event: raw });
  });

  client.on(RoomEvent.TimelineReset, (room: Room | undefined) => {
    if (room && rows.room(room.roomId)) rows.openGap(room.roomId);
  });

  client.on(RoomEvent.MyMembership, (room: Room, membership: string) => {
    if (membership === "invite") deps.onInvite(room);
    if (membership === "join") fresh.add(room.roomId);
    if (membership === "leave" || membership === "ban") deps.onLeft(room.roomId);
  });

  client.on(RoomStateEvent.Members, (_event, state, member) => {
    if (isReady && member.userId !== me && (member.membership === "leave" || member.membership === "ban")) void leaveWhenEmpty(client, state.roomId, log);
  });

  async function fill(room_id: string): Promise<void> {
    const isNew = rows.room(room_id)?.mark === null;
    const found = await deps.throughOutages("catch up", () => fillGap(client, rows, room_id, now()));
    const room = client.getRoom(room_id);
    if (isNew && room) deps.onEntered(room, found);
    if (isReady) for (const pending of rows.pending()) if (pending.event.room_id === room_id) take(pending);
  }

  async function fillAll(): Promise<void> {
    const open = rows.gaps().filter((room_id) => !filling.has(room_id) && client.getRoom(room_id)?.getMyMembership() === "join");
    for (const room_id of open) filling.add(room_id);
    await inGroups(open, (room_id) => room_id, ABREAST, async (room_id) => {
      try {
        await fill(room_id);
        filling.delete(room_id);
      } catch (error) {
        log.warn({ room_id, why: String(error) }, "a room could not be caught up");
        setTimeout(() => filling.delete(room_id), AGAIN_MS).unref();
      }
    });
  }

  async function begin(): Promise<void> {
    await deps.prepare();
    await markUsersDirty(client);
    for (const room of client.getRooms()) if (room.getMyMembership() === "invite") deps.onInvite(room);
    await fillAll();
    isReady = true;
    for (const pending of rows.pending()) if (rows.room(pending.event.room_id)?.gap !== true) take(pending);
  }

  const ready = Promise.withResolvers<void>();
  let isFirst = true;
  client.on(ClientEvent.Sync, (state: SyncState) => {
    if (state === SyncState.Error) log.warn({}, "the homeserver does not answer; waiting for it");
    if (state !== SyncState.Syncing) return;
    for (const room_id of fresh) if (client.getRoom(room_id)?.getMyMembership() === "join") rows.newRoom(room_id);
    fresh.clear();
    if (isFirst) begin().then(ready.resolve, ready.reject);
    else void fillAll();
    isFirst = false;
  });
  return ready.promise;
}

const relation = ({ content }: RawEvent): string | undefined => (content["m.relates_to"] as { rel_type?: string } | undefined)?.rel_type;

/** Devices that others added while we were down may have been missed: ask for them again. */
async function markUsersDirty(client: MatrixClient): Promise<void> {
  const crypto = client.getCrypto() as { markAllTrackedUsersAsDirty?: () => Promise<void> } | undefined;
  await crypto?.markAllTrackedUsersAsDirty?.();
}

async function leaveWhenEmpty(client: MatrixClient, room_id: string, log: Log): Promise<void> {
  const room = client.getRoom(room_id);
  if (room?.getMyMembership() !== "join" || room.getInvitedMemberCount() > 0) return;
  try {
    const { joined } = await client.getJoinedRoomMembers(room_id);
    if (Object.keys(joined).length === 1) await client.leave(room_id);
  } catch (error) {
    log.info({ room_id, why: String(error) }, "an empty room could not be left");
  }
}
