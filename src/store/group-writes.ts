/** Each write that concerns a group, to its table. */
import type { GroupWrite } from "../records/group.ts";
import type { Tx } from "./engine.ts";
import { withdrawCard, writeCard } from "./group-cards.ts";
import { closeList, dropEntry, writeEntry, writeList } from "./group-lists.ts";
import { writeWeek, writeWinterMember } from "./group-winter.ts";
import { linkPlace, unlinkPlace, writeLinkCode } from "./groups.ts";

export async function writeGroup(tx: Tx, write: GroupWrite, now_ms: number): Promise<void> {
  switch (write.write) {
    case "link-code":
      return writeLinkCode(tx, write.link);
    case "link-place":
      return linkPlace(tx, write.code, write.place_id, write.group_id);
    case "unlink-place":
      return unlinkPlace(tx, write.place_id);
    case "card":
      return writeCard(tx, write.card);
    case "withdraw-card":
      return withdrawCard(tx, write.group_id, write.code, now_ms);
    case "winter-member":
      return writeWinterMember(tx, write.member);
    case "winter-week":
      return writeWeek(tx, write.week);
    case "group-list":
      return writeList(tx, write.list);
    case "close-list":
      return closeList(tx, write.group_id, write.kind, write.version);
    case "group-entry":
      return writeEntry(tx, write.entry);
    case "drop-entry":
      return dropEntry(tx, write.group_id, write.kind, write.person_id);
  }
}
