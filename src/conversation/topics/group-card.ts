/** "On my heater": the reckoning of a card once more, from one's own records, beside the shared one, and what makes the difference. */
import { heading, say, text, verbatim, type Block, type NumberItem, type Text } from "../../answer.ts";
import type { TopicId } from "../../topics.ts";
import { TOPIC_CAUTIONS } from "../cautions.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { hear, type Hearing } from "../hear.ts";
import type { onTopic } from "../on-topic.ts";
import { inputLabel, inputsOf, inputValue, keysOf, swapped, type Asking, type Input } from "./group-inputs.ts";
import { cardOf, factsOf, unknownCard, wasWithdrawn, type CardFacts } from "./group-share.ts";

export type OnTopic = typeof onTopic;

/** Of the whole difference: below this share one input alone explains nothing. */
const TELLS_SHARE = 0.25;
/** A plan of days is a search, and the heat of a fire a march through time: asked once more for every figure they would hold up others. */
const SEARCHES: ReadonlySet<TopicId> = new Set<TopicId>(["fire-plan"]);
const SLOW: ReadonlySet<TopicId> = new Set<TopicId>(["heat-curve", "wood-stock"]);

export function mineOutcome(context: Context, code: string, onTopic: OnTopic): Outcome {
  const card = cardOf(context, code);
  if (!card) return unknownCard(code);
  if (card.withdrawn_at_ms !== null) return wasWithdrawn(card.code);
  const facts = factsOf(card);
  const asking = askedAgain(context, facts);
  const outcome = onTopic(asking.context, facts.topic, asking.heard);
  const own = beside(context, card.code, facts, asking, outcome, onTopic);
  const { message, snapshot } = context;
  if (message.place.kind === "private" || message.place.whispers === true) return own;
  const place_id = snapshot.group?.private_place;
  if (!place_id) return { draft: { topic: "share-result", headline: text("card.ask-privately", { code: card.code }) } };
  return {
    draft: { topic: "share-result", headline: text("card.sent-privately") },
    also_tell: [{ key: `card:${card.group_id}:${card.code}:mine:${context.id("mine")}`, person_id: snapshot.person.id, place_id, draft: own.draft }],
  };
}

/** The same question with the figures that were said in it; what came from the other's records comes from one's own. */
function askedAgain(context: Context, { said, inputs }: CardFacts): Asking {
  const { shareable: _shareable, reckoned: _reckoned, tree: _tree, pending: _pending, ...state } = context.state;
  const fresh: Context = { ...context, text: "", state };
  const heard: Hearing = { ...hear(fresh), ...said };
  const asking = { context: fresh, heard };
  // weather is no record of the heater: without any of one's own, the card's is taken
  const weather = inputs.filter(({ key }) => key === "outside_low_C" || key === "outside_high_C");
  const known = inputsOf("load-size", asking).some(({ key }) => key === "outside_low_C");
  return known ? asking : weather.reduce(swapped, asking);
}

function beside(context: Context, code: string, facts: CardFacts, asking: Asking, { draft }: Outcome, onTopic: OnTopic): Outcome {
  const list = draft.blocks ?? [];
  const items = list.flatMap((block) => (block.kind === "numbers" ? block.items : []));
  const inputs = inputsOf(facts.topic, asking);
  const lacking = facts.inputs.filter(({ key }) => !inputs.some((one) => one.key === key));
  const weatherTaken = !inputsOf(facts.topic, { context: { ...context, text: "" }, heard: { ...hear({ ...context, text: "" }), ...facts.said } }).some(({ key }) => key === "outside_low_C") && inputs.some(({ key }) => key === "outside_low_C");
  const why = difference(facts, items, asking, inputs, onTopic);
  return {
    draft: {
      topic: "share-result",
      also: [facts.topic],
      cautions: [...(draft.cautions ?? []), ...(TOPIC_CAUTIONS[facts.topic] ?? []), ...facts.cautions],
      headline: text("mine.headline", { code, own: draft.headline }),
      blocks: blocks(
        { kind: "table", cautions: facts.cautions, columns: [text("mine.column.what"), text("mine.column.shared", { code }), text("mine.column.yours")], rows: rowsOf(facts, items, inputs) },
        why && say(why),
        lacking.length > 0 && say(text("mine.lacking", { what: lacking.slice(0, 3).map(({ key }) => inputLabel(key)) })),
        weatherTaken && say(text("mine.weather")),
        heading(text("mine.own")),
        ...list.filter((block) => block.kind !== "choices"),
      ),
    },
  };
}

const NONE = verbatim("–");
const figure = (item: NumberItem): Text => text("plain", { value: item.quantity });

function rowsOf({ items: shared, inputs: theirs }: CardFacts, items: readonly NumberItem[], own: readonly Input[]): Text[][] {
  const keys = [...new Set([...shared, ...items].map(({ key }) => key))];
  const results = keys.flatMap((key) => {
    const [a, b] = [shared.find((one) => one.key === key), items.find((one) => one.key === key)];
    const label = (a ?? b)?.label;
    return label ? [[label, a ? figure(a) : NONE, b ? figure(b) : NONE]] : [];
  });
  const names = [...new Set([...theirs, ...own].map(({ key }) => key))];
  const rests = names.map((key) => {
    const [a, b] = [theirs.find((one) => one.key === key), own.find((one) => one.key === key)];
    return [inputLabel(key), a ? inputValue(a) : NONE, b ? inputValue(b) : NONE];
  });
  return [...results, ...rests];
}

/**
 * The input that matters most: how far it alone moves one's own result towards the card's, and where that is cheap to reckon, how far it
 * alone takes the card's back. No figure reckoned with another's heater is ever said.
 */
function difference({ topic, items: shared, inputs: theirs }: CardFacts, items: readonly NumberItem[], asking: Asking, own: readonly Input[], onTopic: OnTopic): Text | null {
  const both = shared.flatMap((one) => {
    const mine = items.find(({ key }) => key === one.key);
    return mine && !theirs.some(({ key }) => key === one.key) ? [{ key: one.key, gap: one.quantity.value - mine.quantity.value, mine: mine.quantity.value }] : [];
  });
  const main = both.find(({ gap }) => Math.abs(gap) > 1e-6);
  if (!main) return both.length > 0 ? text("mine.same") : null;
  const differing = keysOf(topic).flatMap((key) => {
    const [a, b] = [theirs.find((one) => one.key === key), own.find((one) => one.key === key)];
    return a && a.value !== b?.value ? [{ a, b }] : [];
  });
  const told = (id: string, { a, b }: Pair): Text => text(id, { what: inputLabel(a.key), theirs: inputValue(a), yours: b ? inputValue(b) : text("mine.unknown") });
  if (SEARCHES.has(topic)) {
    const [farthest] = differing.toSorted((x, y) => farApart(y) - farApart(x));
    return farthest ? told("mine.differs-most", farthest) : null;
  }
  const resultOf = (asked: Asking): number | null => valueOf(onTopic(asked.context, topic, asked.heard).draft.blocks ?? [], main.key);
  const all = SLOW.has(topic) ? null : differing.reduce((asked, { a }) => swapped(asked, a), asking);
  const theirs_result = all && resultOf(all);
  const apart = (x: number | null, y: number | null): number => (x === null || y === null ? 0 : Math.abs(x - y));
  const tried = differing.map((pair) => ({ pair, effect: apart(resultOf(swapped(asking, pair.a)), main.mine) + (all && pair.b ? apart(resultOf(swapped(all, pair.b)), theirs_result) : 0) }));
  const [most] = tried.toSorted((x, y) => y.effect - x.effect);
  return most && most.effect >= TELLS_SHARE * Math.abs(main.gap) ? told("mine.difference", most.pair) : text("mine.difference-many");
}

interface Pair {
  readonly a: Input;
  /** absent where one's own is not known */
  readonly b: Input | undefined;
}
const farApart = ({ a, b }: Pair): number =>
  typeof a.value === "number" && typeof b?.value === "number" ? Math.abs(a.value - b.value) / Math.max(1, Math.abs(a.value), Math.abs(b.value)) : 0;

const valueOf = (list: readonly Block[], key: string): number | null =>
  list.flatMap((block) => (block.kind === "numbers" ? block.items : [])).find((item) => item.key === key)?.quantity.value ?? null;
