/** The moisture meter that a group lends around: who has it, since when, who is next. */
import { say, text, verbatim, type Block, type Text } from "../../answer.ts";
import type { Group, GroupEntry, GroupList } from "../../records/group.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { entriesOf, here, listOf } from "./group-lists.ts";

interface Standing {
  readonly group: Group;
  readonly list: GroupList | undefined;
  readonly holder: GroupEntry | undefined;
  /** in the order of asking */
  readonly line: readonly GroupEntry[];
  readonly me: GroupEntry | undefined;
}

function standing(context: Context): Standing | Outcome {
  const found = here(context, "meter");
  if ("draft" in found) return found;
  const entries = entriesOf(context, found.group.id, "meter");
  return {
    group: found.group, list: listOf(context, found.group.id, "meter"),
    holder: entries.find(({ facts }) => facts.has === true), line: entries.filter(({ facts }) => facts.has !== true),
    me: entries.find(({ person_id }) => person_id === context.snapshot.person.id),
  };
}

const nameOf = ({ name }: Pick<GroupEntry, "name">): Text => (name ? verbatim(name) : text("group.member"));

export function whoHasMeter(context: Context): Outcome {
  const found = standing(context);
  if ("draft" in found) return found;
  const { holder, line } = found;
  return {
    draft: {
      topic: "share-result",
      headline: holder ? text("meter.has", { who: nameOf(holder), since: { at_ms: holder.at_ms, show: "date" } }) : text("meter.nobody"),
      blocks: blocks(say(line.length > 0 ? text("meter.line", { who: line.slice(0, 5).map(nameOf) }) : text("meter.no-line")), choices(found)),
    },
  };
}

const choices = ({ group, holder, me }: Pick<Standing, "group" | "holder" | "me">): Block => ({
  kind: "choices", cautions: [],
  choices: [
    ...(me && me === holder ? [{ id: `list:give=meter=${group.id}`, label: text("meter.give") }] : [{ id: `list:have=meter=${group.id}`, label: text("meter.have") }]),
    ...(me ? (me === holder ? [] : [{ id: `list:leave=meter=${group.id}`, label: text("meter.leave") }]) : [{ id: `list:join=meter=${group.id}`, label: text("meter.join") }]),
  ],
});

/** Every change of hands moves the list on, so that two at once cannot both have it. */
const moved = (context: Context, { group, list }: Standing): { write: "group-list"; list: GroupList } => ({
  write: "group-list", list: { group_id: group.id, kind: "meter", version: list?.version ?? 0, opened_by: list?.opened_by ?? context.snapshot.person.id, at_ms: list?.at_ms ?? context.now_ms, facts: {} },
});
const entry = (context: Context, group: Group, facts: Record<string, unknown>): Omit<GroupEntry, "name"> => ({
  group_id: group.id, kind: "meter", person_id: context.snapshot.person.id, at_ms: context.now_ms, facts: { ...facts, place_id: context.snapshot.group?.private_place ?? context.snapshot.place.id },
});

export function haveMeter(context: Context): Outcome {
  const found = standing(context);
  if ("draft" in found) return found;
  const { group, holder, me } = found;
  if (me && me === holder) return { draft: { topic: "share-result", headline: text("meter.you-have"), blocks: [choices(found)] } };
  const mine = entry(context, group, { has: true });
  return {
    draft: { topic: "share-result", headline: text("meter.yours"), blocks: blocks(holder && say(text("meter.before", { who: nameOf(holder) })), say(text("meter.seen")), choices({ group, holder: mine, me: mine })) },
    writes: [moved(context, found), ...(holder ? [{ write: "drop-entry" as const, group_id: group.id, kind: "meter" as const, person_id: holder.person_id }] : []), { write: "group-entry", entry: mine }],
  };
}

export function wantMeter(context: Context): Outcome {
  const found = standing(context);
  if ("draft" in found) return found;
  const { group, holder, line, me } = found;
  if (me) return { draft: { topic: "share-result", headline: text(me === holder ? "meter.you-have" : "meter.in-line"), blocks: [choices(found)] } };
  return {
    draft: { topic: "share-result", headline: text("meter.queued", { place: line.length + 1 }), blocks: blocks(holder && say(text("meter.ask", { who: nameOf(holder) })), say(text("meter.seen"))) },
    writes: [...(found.list ? [] : [moved(context, found)]), { write: "group-entry", entry: entry(context, group, {}) }],
  };
}

/** Handed on: whoever is next is told. */
export function giveMeter(context: Context): Outcome {
  const found = standing(context);
  if ("draft" in found) return found;
  const { group, holder, line, me } = found;
  if (!me || me !== holder) return { draft: { topic: "share-result", headline: text("meter.not-yours"), blocks: [choices(found)] } };
  const [next] = line;
  return {
    draft: { topic: "share-result", headline: text(next ? "meter.given" : "meter.given-nobody", next ? { who: nameOf(next) } : {}) },
    writes: [moved(context, found), { write: "drop-entry", group_id: group.id, kind: "meter", person_id: me.person_id }],
    ...(next
      ? {
          also_tell: [{
            key: context.id("meter"), person_id: next.person_id, place_id: String(next.facts.place_id),
            draft: { topic: "share-result", headline: text("meter.your-turn"), blocks: [{ kind: "choices", cautions: [], choices: [{ id: `list:have=meter=${group.id}`, label: text("meter.have") }, { id: `list:leave=meter=${group.id}`, label: text("meter.leave") }] }] },
          }],
        }
      : {}),
  };
}

export function leaveMeterLine(context: Context): Outcome {
  const found = standing(context);
  if ("draft" in found) return found;
  const { group, me, holder } = found;
  if (!me || me === holder) return { draft: { topic: "share-result", headline: text("meter.not-in-line"), blocks: [choices(found)] } };
  return { draft: { topic: "share-result", headline: text("meter.out") }, writes: [{ write: "drop-entry", group_id: group.id, kind: "meter", person_id: me.person_id }] };
}
