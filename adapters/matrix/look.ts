/** From an event as it came in to what it says, from whom and where; and whether it is a call for help. */
import type { MatrixClient, MatrixEvent, Room } from "matrix-js-sdk";
import type { Message } from "../../src/message.ts";
import type { Core, Reply } from "../adapter.ts";
import { type Parsed, parse } from "./parse.ts";
import { identityOf, isPrivate, NETWORK, placeOf } from "./rooms.ts";
import type { Pending, Rows } from "./store/rows.ts";

export interface Said {
  readonly pending: Pending;
  readonly room: Room;
  readonly event: MatrixEvent;
  readonly parsed: Exclude<Parsed, { kind: "nothing" }>;
  readonly message: Message;
  readonly urgent: Reply | null;
}
/** "unreadable": its key is missing; "later": the room is not known yet */
export type Looked = Said | "nothing" | "unreadable" | "later";

export interface LookDeps {
  readonly client: MatrixClient;
  readonly core: Pick<Core, "emergency">;
  readonly rows: Pick<Rows, "isOurs" | "room">;
  readonly now: () => number;
  /** what a message in a group starts with, where the room has not said otherwise */
  readonly usual_prefix: string;
}

export async function look({ client, core, rows, now, usual_prefix }: LookDeps, pending: Pending): Promise<Looked> {
  const { event_id, room_id, origin_server_ts } = pending.event;
  const me = client.getSafeUserId();
  const room = client.getRoom(room_id);
  if (!room) return "later";
  if (room.getMyMembership() !== "join") return "nothing";
  const event = client.getEventMapper({ preventReEmit: true, decrypt: false })(pending.event as never);
  await client.decryptEventIfNeeded(event);
  // one that could not be decrypted has the type of a message
  if (event.isDecryptionFailure() || event.getType() === "m.room.encrypted") return event.isRedacted() ? "nothing" : "unreadable";
  const sender = event.getSender() ?? "";
  const parsed = parse(
    { event_id, sender, type: event.getType(), content: { ...event.getContent(), ...relationOf(event) } },
    {
      me, is_private: isPrivate(room), isOurs: rows.isOurs,
      my_name: room.getMember(me)?.rawDisplayName ?? "",
      prefix: rows.room(room_id)?.prefix ?? usual_prefix,
    },
  );
  if (parsed.kind === "nothing") return "nothing";
  const message: Message = {
    adapter: NETWORK,
    native_id: event_id,
    identity: identityOf(room, sender),
    place: await placeOf(client, room, sender),
    received_at_ms: Math.min(origin_server_ts, now()),
  };
  const words = parsed.kind === "said" ? parsed.whole : parsed.kind === "edit" ? parsed.text : null;
  const found = words === null ? null : core.emergency({ ...message, text: words });
  const isForged = found !== null && parsed.kind === "edit" && !(await isOwn(client, room, parsed.of, sender));
  return { pending, room, event, parsed, message, urgent: isForged ? null : found };
}

/** Whether the event that is edited was written by the same person. */
async function isOwn(client: MatrixClient, room: Room, event_id: string, sender: string): Promise<boolean> {
  const here = room.findEventById(event_id)?.getSender();
  return (here ?? (await client.fetchRoomEvent(room.roomId, event_id).catch(() => ({ sender: undefined }))).sender) === sender;
}

/** In encrypted rooms the relation stands outside, in clear, and may be left out inside. */
function relationOf(event: MatrixEvent): object {
  const relation = event.getContent()["m.relates_to"] ?? event.getWireContent()["m.relates_to"];
  return relation ? { "m.relates_to": relation } : {};
}
