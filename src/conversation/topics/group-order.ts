/** A joint wood order: opened by a moderator, filled by members in whatever unit they buy, summed in solid and stacked cubic metres and dry kilograms. */
import { numbers, say, text, verbatim, type Block, type Text } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { sumOf, type Ordered } from "../../group/order.ts";
import { q } from "../../quantities.ts";
import type { GroupEntry } from "../../records/group.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { hear } from "../hear.ts";
import { inUnit, type Figure } from "../reading/figures.ts";
import { shareHeard } from "./calculate.ts";
import { closed, entriesOf, here, listOf, moderator, opened } from "./group-lists.ts";
import { nameOf, plain } from "./group-share.ts";

/** Bought wood whose water nobody named; common practice, no source. */
const USUAL_PCT_WET = 20;
/** A joint order of one member; more is a slip of the finger. */
const MOST_M3_SOLID = 200;

export function openOrder(context: Context): Outcome {
  const found = moderator(context);
  if ("draft" in found) return found;
  const told: Text = text("order.opened", { group: nameOf(found.group) });
  return opened(context, found.group, "order", {}, told, [say(text("order.how")), choices(found.group.id)]);
}

export function addToOrder(context: Context): Outcome {
  const found = here(context, "order");
  if ("draft" in found) return found;
  const { group } = found;
  if (!listOf(context, group.id, "order")) return plain("order.none", say(text("order.none-how")));
  const amount = amountIn(context);
  if (!amount) return plain("order.what", say(text("order.how")));
  const before = entriesOf(context, group.id, "order").find(({ person_id }) => person_id === context.snapshot.person.id);
  const line = added(before?.facts as Ordered | undefined, amount.ordered);
  if (line.volume_m3_solid > MOST_M3_SOLID) return plain("order.too-much");
  const entry = { group_id: group.id, kind: "order" as const, person_id: context.snapshot.person.id, at_ms: context.now_ms, facts: { ...line } };
  const all = [...entriesOf(context, group.id, "order").filter((one) => one !== before), entry];
  return {
    draft: {
      topic: "share-result",
      headline: text("order.added", { stacked: q(line.volume_m3_stacked, "m3", { digits: 1 }) }),
      blocks: blocks(say(text("order.seen")), amount.taken && say(amount.taken), ...total(all), choices(group.id)),
    },
    writes: [{ write: "group-entry", entry }],
  };
}

export function showOrder(context: Context): Outcome {
  const found = here(context, "order");
  if ("draft" in found) return found;
  const { group } = found;
  if (!listOf(context, group.id, "order")) return plain("order.none", say(text("order.none-how")));
  const lines = entriesOf(context, group.id, "order");
  return { draft: { topic: "share-result", headline: text("order.headline", { group: nameOf(group), count: lines.length }), blocks: blocks(table(lines), ...total(lines), choices(group.id)) } };
}

export function leaveOrder(context: Context): Outcome {
  const found = here(context, "order");
  if ("draft" in found) return found;
  const { id } = context.snapshot.person;
  if (!entriesOf(context, found.group.id, "order").some(({ person_id }) => person_id === id)) return plain("order.not-in");
  return { draft: { topic: "share-result", headline: text("order.left") }, writes: [{ write: "drop-entry", group_id: found.group.id, kind: "order", person_id: id }] };
}

export function closeOrder(context: Context): Outcome {
  const found = moderator(context);
  if ("draft" in found) return found;
  const list = listOf(context, found.group.id, "order");
  if (!list) return plain("order.none");
  const lines = entriesOf(context, found.group.id, "order");
  return closed(context, found.group, list, text("order.closed", { count: lines.length }), total(lines), blocks(table(lines)));
}

const choices = (group_id: string): Block => ({ kind: "choices", cautions: [], choices: [{ id: `list:show=order=${group_id}`, label: text("order.show") }, { id: `list:leave=order=${group_id}`, label: text("order.leave") }] });

function table(lines: readonly GroupEntry[] | readonly Omit<GroupEntry, "name">[]): Block | null {
  if (lines.length === 0) return null;
  return {
    kind: "table", cautions: [], columns: ["who", "stacked", "solid", "dry"].map((id) => text(`order.column.${id}`)),
    rows: lines.map((line) => {
      const { volume_m3_stacked, volume_m3_solid, dry_kg } = line.facts as unknown as Ordered;
      const name = "name" in line ? line.name : undefined;
      return [name ? verbatim(name) : text("group.member"), text("plain", { value: q(volume_m3_stacked, "m3", { digits: 1 }) }), text("plain", { value: q(volume_m3_solid, "m3", { digits: 1 }) }), dry_kg === null ? verbatim("–") : text("plain", { value: q(dry_kg, "kg", { digits: 0 }) })];
    }),
  };
}

function total(lines: readonly { readonly facts: GroupEntry["facts"] }[]): Block[] {
  const sum = sumOf(lines.map(({ facts }) => facts as unknown as Ordered));
  return [
    numbers(
      { key: "volume_m3_solid", label: text("number.volume_m3_solid"), quantity: q(sum.volume_m3_solid, "m3", { digits: 1 }) },
      { key: "volume_m3_stacked", label: text("number.volume_m3_stacked"), quantity: q(sum.volume_m3_stacked, "m3", { digits: 1 }) },
      { key: "dry_kg", label: text("number.dry_kg"), quantity: q(sum.dry_kg, "kg", { digits: 0, low: sum.low_kg, high: sum.high_kg }) },
    ),
    ...blocks(sum.unweighed > 0 && say(text("order.unweighed", { count: sum.unweighed }))),
  ];
}

const added = (before: Ordered | undefined, more: Ordered): Ordered => {
  if (!before) return more;
  const plus = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a + b);
  return {
    volume_m3_solid: before.volume_m3_solid + more.volume_m3_solid, volume_m3_stacked: before.volume_m3_stacked + more.volume_m3_stacked,
    dry_kg: plus(before.dry_kg, more.dry_kg), low_kg: plus(before.low_kg, more.low_kg), high_kg: plus(before.high_kg, more.high_kg),
  };
};

/** What is ordered, and what had to be taken for it. */
function amountIn(context: Context): { ordered: Ordered; taken: Text | null } | null {
  const heard = hear(context);
  const figure = heard.figures.find((one) => (one.dimension === "volume" || one.dimension === "mass") && one.value > 0);
  if (!figure) return null;
  const of = (given: object, tree: string) => reckon("stack", { ...given, species: tree, moisture_pct_wet: 0 });
  const named = heard.species ? of({ volume_m3_stacked: 1 }, heard.species) : null;
  const species = named?.ok ? (heard.species ?? "hardwood") : "hardwood";
  const one = of({ volume_m3_stacked: 1 }, species);
  if (!one.ok) return null;
  const [low = 0, high = 0] = (one.result.range as Record<string, [number, number]>).mass_kg ?? [];
  const perStacked = { solid: Number(one.result.volume_m3_solid), dry_kg: Number(one.result.mass_kg), low, high };
  const share = shareHeard(heard);
  const wet = share === undefined ? USUAL_PCT_WET : share.basis === "dry" ? (100 * share.value) / (100 + share.value) : share.value;
  const stacked = figure.dimension === "mass" ? ((inUnit(figure, "kg") ?? 0) * (1 - wet / 100)) / perStacked.dry_kg : stackedOf(figure, species);
  if (stacked === null || !(stacked > 0)) return null;
  const bare = figure.dimension === "volume" && figure.filling === undefined && figure.unit !== "cord";
  return {
    ordered: { volume_m3_stacked: stacked, volume_m3_solid: stacked * perStacked.solid, dry_kg: stacked * perStacked.dry_kg, low_kg: stacked * perStacked.low, high_kg: stacked * perStacked.high },
    taken: figure.dimension === "mass" ? text("order.taken-mass", { moisture: q(wet, "pct") }) : bare ? text("order.taken-stacked") : heard.species === undefined ? text("order.taken-hardwood") : null,
  };
}

function stackedOf(figure: Figure, species: string): number | null {
  const m3 = inUnit(figure, "m3") ?? 0;
  const given = figure.unit === "cord" ? { cords: figure.value } : figure.filling === "loose" ? { volume_m3_loose: m3 } : figure.filling === "solid" ? { volume_m3_solid: m3 } : { volume_m3_stacked: m3 };
  const done = reckon("stack", { ...given, species, moisture_pct_wet: 0 });
  return done.ok ? Number(done.result.volume_m3_stacked) : null;
}
