/**
 * Sharing a reckoning: offered below an answer with figures, sent to the group's places by a press and by nothing else, withdrawn by whoever
 * shared it or a moderator. The card holds what the answer said and what it rests on; never the question's words.
 */
import { ask, numbers, say, text, verbatim, type Block, type Choice, type Draft, type NumberItem, type Picture, type Text } from "../../answer.ts";
import { codeFor } from "../../group/code.ts";
import type { Card, Group } from "../../records/group.ts";
import type { PlaceRow } from "../../records/types.ts";
import type { TopicId } from "../../topics.ts";
import { TOPIC_CAUTIONS } from "../cautions.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { hear, type Hearing } from "../hear.ts";
import { canBeShared, inputLabel, inputsOf, inputValue, type Input, type Said } from "./group-inputs.ts";

export interface CardFacts {
  readonly topic: TopicId;
  readonly headline: Text;
  readonly items: readonly NumberItem[];
  readonly inputs: readonly Input[];
  readonly said: Said;
  readonly picture?: Picture;
  readonly cautions: readonly string[];
  /** only where whoever shared it wished so */
  readonly name?: string;
}

/** What can be shared now, under the id of the button that was shown with it. */
export interface Shareable {
  readonly id: string;
  readonly card: CardFacts;
  /** codes under which it was shared, by group */
  readonly shared: Readonly<Record<string, string>>;
  readonly at_ms: number;
}

export const factsOf = (card: Card): CardFacts => card.facts as unknown as CardFacts;
export const groupHere = (context: Context): Group | undefined => {
  const { place, groups = [] } = context.snapshot;
  return groups.find((group) => group.places.some(({ id }) => id === place.id));
};

/** An answer with figures gets a button, where there is a group to share it with. */
export function offerSharing(context: Context, outcome: Outcome): Outcome {
  const { draft } = outcome;
  const { groups = [] } = context.snapshot;
  const facts = groups.length > 0 && !outcome.ready && !draft.emergency && canBeShared(draft.topic) ? cardFactsOf(context, outcome) : null;
  if (!facts) return outcome;
  const id = context.now_ms.toString(36);
  const choices: Block = { kind: "choices", cautions: [], choices: [{ id: `share:${id}`, label: text("share.offer") }] };
  const shareable: Shareable = { id, card: facts, shared: {}, at_ms: context.now_ms };
  return { ...outcome, draft: { ...draft, blocks: [...(draft.blocks ?? []), choices] }, state: { ...outcome.state, shareable } };
}

function cardFactsOf(context: Context, { draft, state }: Outcome): CardFacts | null {
  const list = draft.blocks ?? [];
  const items = list.flatMap((block) => (block.kind === "numbers" ? block.items : []));
  if (items.length === 0 || hasWords(draft.headline)) return null;
  const heard = hear(context);
  const reckoned = state?.reckoned?.topic === "load-size" ? (state.reckoned.inputs as Hearing["load"]) : {};
  const said: Said = { figures: heard.figures, ...(heard.species ? { species: heard.species } : {}), ...(heard.load_kg === undefined ? {} : { load_kg: heard.load_kg }), load: { ...onlyLoad(reckoned), ...heard.load } };
  const picture = list.find((block) => block.kind === "picture")?.picture;
  return {
    topic: draft.topic,
    headline: draft.headline,
    items,
    inputs: inputsOf(draft.topic, { context, heard: { ...heard, ...said } }),
    said,
    ...(picture && !hasWords(picture.alt) ? { picture } : {}),
    cautions: [...new Set([...(draft.cautions ?? []), ...list.flatMap((block) => block.cautions), ...(TOPIC_CAUTIONS[draft.topic] ?? [])])],
  };
}

const onlyLoad = ({ low_C, high_C, moisture_pct_wet, species }: Hearing["load"]): Hearing["load"] => ({
  ...(low_C === undefined ? {} : { low_C }), ...(high_C === undefined ? {} : { high_C }), ...(moisture_pct_wet === undefined ? {} : { moisture_pct_wet }), ...(species === undefined ? {} : { species }),
});

/** Whether somebody's own words stand in it. */
function hasWords(words: Text): boolean {
  if (words.id === "verbatim") return true;
  const inside = (arg: unknown): boolean => (Array.isArray(arg) ? arg.some(inside) : typeof arg === "object" && arg !== null && "id" in arg && hasWords(arg as Text));
  return Object.values(words.args ?? {}).some(inside);
}

/** `share:<id>`, `share:<id>=<group>`, and "share this with the group" in words. */
export function shareOutcome(context: Context, pressed: string, named = false): Outcome {
  const { shareable } = context.state;
  const [id = "", group_id] = pressed.split("=");
  const { groups = [] } = context.snapshot;
  if (groups.length === 0) return plain("share.no-group", say(text("share.no-group-how")));
  if (!shareable || (id !== "" && id !== shareable.id)) return plain("share.nothing", say(text("share.nothing-how")));
  const group = group_id === undefined ? (groupHere(context) ?? (groups.length === 1 ? groups[0] : undefined)) : groups.find((one) => one.id === group_id);
  if (!group) {
    const choices = groups.slice(0, 10).map((one): Choice => ({ id: `share:${shareable.id}=${one.id}`, label: nameOf(one) }));
    return { draft: { topic: "share-result", headline: text("share.which"), blocks: [ask("share", text("share.which-ask"), choices)] } };
  }
  const before = shareable.shared[group.id];
  if (before !== undefined) return { draft: { topic: "share-result", headline: text("share.already", { code: before }), blocks: [choicesFor(context, before, true)] } };
  return sharedNow(context, shareable, group, named);
}

/** What could be shared, shown once more before the press. */
export function readyToShare(context: Context): Outcome {
  const { shareable } = context.state;
  if (!shareable || (context.snapshot.groups ?? []).length === 0) return shareOutcome(context, "");
  const { headline, inputs, cautions } = shareable.card;
  return {
    draft: {
      topic: "share-result",
      cautions,
      headline: text("share.ready"),
      blocks: blocks(
        say(headline, ...cautions),
        inputs.length > 0 && say(text("share.ready-with", { what: inputs.map(({ key }) => inputLabel(key)) })),
        { kind: "choices", cautions: [], choices: [{ id: `share:${shareable.id}`, label: text("share.offer") }] },
      ),
    },
  };
}

/** Own cards that stand, each with its button. */
export function takeBack(context: Context): Outcome {
  const own = context.snapshot.group?.own ?? [];
  const choices = [
    ...own.slice(0, 8).map(({ code }): Choice => ({ id: `card:withdraw=${code}`, label: text("share.withdraw", { code }) })),
    ...(context.snapshot.group?.winter ?? []).filter(({ until_week }) => until_week === undefined).slice(0, 2).map(({ group_id }): Choice => ({ id: `winter:leave=${group_id}`, label: text("winter.leave") })),
  ];
  if (choices.length === 0) return plain("share.none-stands");
  return { draft: { topic: "share-result", headline: text("share.stands", { count: own.length }), blocks: [{ kind: "choices", cautions: [], choices }] } };
}

export const nameOf = (group: Pick<Group, "name">): Text => (group.name ? verbatim(group.name) : text("group.unnamed"));

function sharedNow(context: Context, shareable: Shareable, group: Group, named: boolean): Outcome {
  const { snapshot, now_ms } = context;
  const look = snapshot.group;
  if (!look) return plain("share.nothing", say(text("share.nothing-how")));
  const code = codeFor(context.id("card"), look.used.get(group.id) ?? []);
  const name = named ? snapshot.person.name : undefined;
  const facts: CardFacts = { ...shareable.card, ...(name ? { name } : {}) };
  const card: Card = { group_id: group.id, code, person_id: snapshot.person.id, at_ms: now_ms, withdrawn_at_ms: null, facts: facts as never };
  return {
    draft: {
      topic: "share-result",
      headline: text("share.done", { code, group: nameOf(group) }),
      blocks: blocks(say(text(name ? "share.done-named" : "share.done-unnamed")), group.places.length > 1 && say(text("share.places", { count: group.places.length })), choicesFor(context, code, named)),
    },
    writes: [{ write: "card", card }],
    state: { shareable: { ...shareable, shared: { ...shareable.shared, [group.id]: code } } },
    also_tell: toPlaces(context, group, `card:${group.id}:${code}`, (place) => cardDraft(code, facts, liveKey(group.id, code, place))),
  };
}

const choicesFor = ({ snapshot }: Context, code: string, named: boolean): Block => ({
  kind: "choices", cautions: [],
  choices: [...(named || !snapshot.person.name ? [] : [{ id: `card:name=${code}`, label: text("share.add-name") }]), { id: `card:withdraw=${code}`, label: text("share.withdraw", { code }) }],
});

export const liveKey = (group_id: string, code: string, place: Pick<PlaceRow, "id">): string => `card:${group_id}:${code}@${place.id}`;

/** One message to each place of a group, written in the way of whoever's place it is. */
export const toPlaces = (context: Context, group: Group, key: string, draft: (place: PlaceRow) => Draft): NonNullable<Outcome["also_tell"]> =>
  group.places.map((place) => ({ key: `${key}:${place.id}`, person_id: (place.kind === "private" ? place.person_id : undefined) ?? context.snapshot.person.id, place_id: place.id, draft: draft(place) }));

export function cardDraft(code: string, facts: CardFacts, live: string): Draft {
  const { topic, headline, items, inputs, picture, cautions, name } = facts;
  return {
    topic: "share-result",
    also: [topic],
    audience: "place",
    live,
    cautions,
    headline: text("card.headline", { code, about: text(`topic.${topic}`) }),
    blocks: blocks(
      say(headline, ...cautions),
      name !== undefined && say(text("card.by", { name: verbatim(name) })),
      numbers(...items),
      inputs.length > 0 && {
        kind: "table", cautions: [], caption: text("card.rests-on"), columns: [text("card.column.what"), text("card.column.value")],
        rows: inputs.map((input) => [inputLabel(input.key), inputValue(input)]),
      },
      picture && { kind: "picture", cautions: [], picture },
      say(text("card.one-heater"), ...cautions),
      say(text("card.how", { code })),
      { kind: "choices", cautions: [], choices: [{ id: `card:mine=${code}`, label: text("card.mine", { code }) }] },
    ),
  };
}

/** The card meant by a code: of the group here first, else the youngest. */
export function cardOf(context: Context, code: string): Card | undefined {
  const here = groupHere(context)?.id;
  const found = (context.snapshot.group?.cards ?? []).filter((card) => card.code === code.toUpperCase());
  return found.find((card) => card.group_id === here) ?? found.toSorted((a, b) => b.at_ms - a.at_ms)[0];
}

export function withdrawOutcome(context: Context, code: string): Outcome {
  const { snapshot, message } = context;
  const card = cardOf(context, code);
  const group = (snapshot.groups ?? []).find((one) => one.id === card?.group_id);
  if (!card || !group) return unknownCard(code);
  if (card.withdrawn_at_ms !== null) return wasWithdrawn(card.code);
  const moderates = message.place.moderates === true && groupHere(context)?.id === group.id;
  if (card.person_id !== snapshot.person.id && !moderates) return plain("card.not-yours", say(text("card.not-yours-how")));
  return {
    draft: { topic: "share-result", headline: text("card.withdrawn-now", { code: card.code }), blocks: [say(text("card.withdrawn-what"))] },
    writes: [{ write: "withdraw-card", group_id: group.id, code: card.code }],
    state: { shareable: undefined },
    also_tell: gone(context, group, card.code),
  };
}

export const gone = (context: Context, group: Group, code: string): NonNullable<Outcome["also_tell"]> =>
  toPlaces(context, group, `card-gone:${group.id}:${code}`, (place) => ({
    topic: "share-result", audience: "place", live: liveKey(group.id, code, place), in_place: true, headline: text("card.was-withdrawn", { code }),
  }));

export function nameOutcome(context: Context, code: string): Outcome {
  const { snapshot } = context;
  const card = cardOf(context, code);
  const group = (snapshot.groups ?? []).find((one) => one.id === card?.group_id);
  const { name } = snapshot.person;
  if (!card || !group) return unknownCard(code);
  if (card.withdrawn_at_ms !== null) return wasWithdrawn(card.code);
  if (card.person_id !== snapshot.person.id || !name) return plain("card.not-yours", say(text("card.not-yours-how")));
  const facts: CardFacts = { ...factsOf(card), name };
  return {
    draft: { topic: "share-result", headline: text("share.named", { code: card.code }), blocks: [choicesFor(context, card.code, true)] },
    writes: [{ write: "card", card: { ...card, facts: facts as never } }],
    also_tell: toPlaces(context, group, `card:${group.id}:${card.code}:named`, (place) => ({ ...cardDraft(card.code, facts, liveKey(group.id, card.code, place)), in_place: true })),
  };
}

export const unknownCard = (code: string): Outcome => plain("card.unknown", say(text("card.unknown-why", { code: code.toUpperCase() })));
export const wasWithdrawn = (code: string): Outcome => ({ draft: { topic: "share-result", headline: text("card.was-withdrawn", { code }) } });
export const plain = (headline: string, ...more: (Block | false | null)[]): Outcome => ({ draft: { topic: "share-result", headline: text(headline), blocks: blocks(...more) } });

/** Being forgotten takes every card along; the places hear of it. */
export const goneWithPerson = (context: Context): Pick<Outcome, "also_tell"> => {
  const { groups = [], group } = context.snapshot;
  return { also_tell: (group?.own ?? []).flatMap(({ group_id, code }) => groups.flatMap((one) => (one.id === group_id ? gone(context, one, code) : []))) };
};
