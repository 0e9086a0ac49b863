/** A live answer on Matrix: the notices sent before are edited, further ones sent, those left over emptied by redaction. */
import type { Edit, Event, Notice } from "./api.ts";

/** The event that puts `content` in the place of an earlier one; clients that know no edits show it as a new notice marked "* ". */
export function edit(event_id: string, content: Notice): Edit {
  return {
    ...content,
    body: `* ${content.body}`,
    formatted_body: `* ${content.formatted_body}`,
    "m.new_content": content,
    "m.relates_to": { rel_type: "m.replace", event_id },
  };
}

export type Change =
  | { readonly change: "edit"; readonly content: Edit }
  | { readonly change: "send"; readonly event: Event }
  | { readonly change: "redact"; readonly event_id: string };

/** What leads from the notices shown so far to the new ones. Pictures and files are sent anew only with notices that are new themselves. */
export function liveChanges(shown: readonly string[], events: readonly Event[]): Change[] {
  let at = 0;
  const changes = events.flatMap((event): Change[] => {
    if (event.kind !== "notice") return at < shown.length ? [] : [{ change: "send", event }];
    const event_id = shown[at++];
    return [event_id === undefined ? { change: "send", event } : { change: "edit", content: edit(event_id, event.content) }];
  });
  return [...changes, ...shown.slice(at).map((event_id): Change => ({ change: "redact", event_id }))];
}
