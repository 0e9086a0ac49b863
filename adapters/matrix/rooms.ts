/** Rooms as places: private or for a group, encrypted or not, and who may set what concerns all. */
import type { MatrixClient, Room } from "matrix-js-sdk";
import type { Identity, Place } from "../../src/message.ts";
import { oneLine, shorten } from "../plain.ts";

export const NETWORK = "matrix";
/** Level at which the specification lets somebody set a room's state, where the room says nothing else. */
const STATE_DEFAULT = 50;
const NAME = 80;

/** Two people, ourselves included: joined or invited. */
export const isPrivate = (room: Room): boolean => room.getInvitedAndJoinedMemberCount() <= 2;

export function moderates(room: Room, person: string): boolean {
  const levels = room.currentState.getStateEvents("m.room.power_levels", "")?.getContent<{ state_default?: number }>();
  return (room.getMember(person)?.powerLevel ?? 0) >= (levels?.state_default ?? STATE_DEFAULT);
}

export async function isEncrypted(client: MatrixClient, room: Room): Promise<boolean> {
  return room.hasEncryptionStateEvent() || ((await client.getCrypto()?.isEncryptionEnabledInRoom(room.roomId)) ?? false);
}

export async function placeOf(client: MatrixClient, room: Room, person: string): Promise<Place> {
  return {
    network: NETWORK,
    id: room.roomId,
    kind: isPrivate(room) ? "private" : "group",
    name: shorten(oneLine(room.name), NAME),
    encrypted: await isEncrypted(client, room),
    moderates: moderates(room, person),
  };
}

export function identityOf(room: Room, person: string): Identity {
  const name = room.getMember(person)?.rawDisplayName;
  return { network: NETWORK, id: person, ...(name && name !== person ? { name: shorten(oneLine(name), NAME) } : {}) };
}
