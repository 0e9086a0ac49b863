/** A group with places on several networks: a moderator makes a code in one place, and it is said once in the other. */
import { say, text, type Draft } from "../../answer.ts";
import { linkCode, linkCodesIn, linkShown } from "../../group/code.ts";
import type { Group } from "../../records/group.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { groupHere, nameOf, plain, toPlaces } from "./group-share.ts";

const MINUTES = 30;

export function makeLink(context: Context): Outcome {
  const { message, snapshot, now_ms } = context;
  const group = groupHere(context);
  if (message.place.kind !== "group" || !group) return plain("link.in-group");
  if (message.place.moderates !== true) return plain("link.moderators");
  if (!message.lot) return plain("link.again");
  const code = linkCode(message.lot);
  return {
    draft: { topic: "share-result", headline: text("link.code", { code: linkShown(code) }), blocks: [say(text("link.how", { minutes: MINUTES, code: linkShown(code) })), say(text("link.what"))] },
    writes: [{ write: "link-code", link: { code, group_id: group.id, place_id: snapshot.place.id, made_by: snapshot.person.id, ends_at_ms: now_ms + MINUTES * 60_000 } }],
  };
}

/** A code said where it is to lead. In a group's room only a moderator of that room may do it. */
export function useLink(context: Context): Outcome | null {
  const [code] = linkCodesIn(context.text);
  if (!code) return null;
  const { message, snapshot, now_ms } = context;
  const link = snapshot.group?.links.find((one) => one.code === code && one.ends_at_ms > now_ms);
  if (!link) return plain("link.unknown", say(text("link.unknown-why", { minutes: MINUTES })));
  if (message.place.kind === "group" && message.place.moderates !== true) return plain("link.moderators");
  if (link.group.places.some(({ id }) => id === snapshot.place.id)) return plain("link.same");
  if (snapshot.place.group_id !== undefined || (groupHere(context)?.places.length ?? 0) > 1) return plain("link.taken", say(text("link.taken-how")));
  const told = (place: Group["places"][number]): Draft => ({
    topic: "share-result", audience: "place", headline: text(message.place.kind === "group" ? "link.announced" : "link.announced-private"), blocks: blocks(place.kind === "group" && say(text("link.announced-what"))),
  });
  return {
    draft: { topic: "share-result", headline: text("link.done", { group: nameOf(link.group) }), blocks: [say(text(message.place.kind === "group" ? "link.done-room" : "link.done-private"))], ...(message.place.kind === "group" ? { audience: "place" as const } : {}) },
    writes: [{ write: "link-place", code, place_id: snapshot.place.id, group_id: link.group_id }],
    also_tell: toPlaces(context, link.group, `linked:${code}`, told),
  };
}

export function unlink(context: Context): Outcome {
  const { message, snapshot } = context;
  const group = groupHere(context);
  if (!group || snapshot.place.group_id === undefined) return plain("link.none");
  if (message.place.kind === "group" && message.place.moderates !== true) return plain("link.moderators");
  if (snapshot.place.id === group.id) return plain("link.root");
  return { draft: { topic: "share-result", headline: text("link.undone", { group: nameOf(group) }) }, writes: [{ write: "unlink-place", place_id: snapshot.place.id }] };
}
