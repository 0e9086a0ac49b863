/** What the organiser's lists share: which group, who may open and close, and how the group hears of it. */
import { text, type Block, type Text } from "../../answer.ts";
import type { Group, GroupEntry, GroupList, ListKind } from "../../records/group.ts";
import type { Context, Outcome } from "../context.ts";
import { groupHere, plain, toPlaces } from "./group-share.ts";
import { isGroup, meantGroup } from "./group-winter.ts";

export const listOf = (context: Context, group_id: string, kind: ListKind): GroupList | undefined => context.snapshot.group?.lists.find((one) => one.group_id === group_id && one.kind === kind);
export const entriesOf = (context: Context, group_id: string, kind: ListKind): readonly GroupEntry[] =>
  (context.snapshot.group?.entries ?? []).filter((one) => one.group_id === group_id && one.kind === kind);

/** The group a member means; where they are in several, the one that has such a list open. */
export function here(context: Context, kind: ListKind): { readonly group: Group } | Outcome {
  const { groups = [] } = context.snapshot;
  const withList = groups.filter(({ id }) => listOf(context, id, kind));
  const only = !groupHere(context) && withList.length === 1 ? withList[0]?.id : undefined;
  const found = meantGroup(context, only, { choice: `list:show=${kind}`, headline: "list.which", ask: "list.which-ask" });
  return isGroup(found) ? { group: found } : found;
}

/** What concerns all is set by a moderator, in the group's room. */
export function moderator(context: Context): { readonly group: Group } | Outcome {
  const group = groupHere(context);
  const { place } = context.message;
  if (!group || place.kind !== "group") return plain("link.in-group");
  return place.moderates === true ? { group } : plain("link.moderators");
}

/** Opened, or set anew; every place of the group hears of it. */
export function opened(context: Context, group: Group, kind: ListKind, facts: GroupList["facts"], told: Text, shown: readonly Block[], more: Pick<Outcome, "due" | "cancel"> = {}): Outcome {
  const before = listOf(context, group.id, kind);
  const list: GroupList = { group_id: group.id, kind, version: before?.version ?? 0, opened_by: context.snapshot.person.id, at_ms: context.now_ms, facts };
  return {
    draft: { topic: "share-result", headline: text("list.told", { what: told }) },
    writes: [{ write: "group-list", list }],
    also_tell: toPlaces(context, group, context.id(`list-${kind}`), () => ({ topic: "share-result", audience: "place", headline: told, blocks: shown })),
    ...more,
  };
}

export function closed(context: Context, group: Group, list: GroupList, told: Text, shown: readonly Block[], own: readonly Block[] = []): Outcome {
  return {
    draft: { topic: "share-result", headline: text("list.told", { what: told }), blocks: own },
    writes: [{ write: "close-list", group_id: group.id, kind: list.kind, version: list.version }],
    also_tell: toPlaces(context, group, context.id(`list-${list.kind}`), () => ({ topic: "share-result", audience: "place", headline: told, blocks: shown })),
  };
}
