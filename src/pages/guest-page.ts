/**
 * One page for whoever minds the fire without a phone: guests, tenants, sitters. The strictest rules only: a guest burns one load and
 * leaves the flue damper open till morning.
 */
import { say, steps, text, verbatim, type Document, type PageBlock, type Text } from "../answer.ts";
import type { Limits } from "../limits.ts";
import { q } from "../quantities.ts";
import type { AlarmsFacts, HeaterFacts, HouseFacts } from "../records/schemas.ts";
import type { HeaterRule } from "../records/types.ts";
import { firebox } from "./firebox.ts";

export interface GuestFacts {
  readonly heater: HeaterFacts;
  readonly house: HouseFacts;
  readonly alarms: AlarmsFacts;
  readonly limits: Limits;
  readonly rules: readonly HeaterRule[];
  readonly basket_kg?: number;
  /** "112", or several with their regions when the country is not known */
  readonly emergency_number: string;
  readonly now_ms: number;
}

const DANGER = ["carbon-monoxide"] as const;

export function guestPage(facts: GuestFacts): Document {
  const { heater, limits, rules } = facts;
  return {
    name: "for-guests.html",
    media_type: "text/html",
    title: heater.name ? text("guest.title-named", { name: verbatim(heater.name) }) : text("guest.title"),
    body: [
      say(text("guest.alarm", { number: facts.emergency_number }), ...DANGER),
      say(text("guest.address")),
      firebox(limits.guessed ? null : limits.max_load_kg),
      steps(loadLines(facts), { ordered: false, title: text("guest.load") }),
      steps(before(facts), { title: text("guest.before") }),
      steps([text("guest.open-slowly"), text("guest.stay"), text("guest.no-more"), text("guest.air-shut")], { ordered: false, title: text("guest.while") }),
      positions(heater),
      steps(never(heater), { ordered: false, title: text("guest.never") }),
      ...rules.flatMap((rule): PageBlock[] => [...(rule.lighting ? [text(`builder.lighting.${rule.lighting}`)] : []), ...(rule.words ? [verbatim(rule.words)] : [])].map((words) => ({ kind: "quote", who: text(`rule.from.${rule.from}`), words, cautions: [] }))),
      steps(whom(facts), { ordered: false, title: text("guest.ring") }),
      say(text("guest.made", { date: { at_ms: facts.now_ms, show: "date" } })),
    ],
  };
}

function loadLines({ limits, basket_kg, now_ms, rules }: GuestFacts): Text[] {
  const ban = rules.find((rule) => rule.no_fire && Date.parse(rule.no_fire.to) > now_ms)?.no_fire;
  const { max_load_kg } = limits;
  return [
    ...(ban ? [text("guest.ban", { until: { at_ms: Date.parse(ban.to), show: "day-time" } })] : []),
    max_load_kg === null ? text("guest.half") : text(limits.guessed ? "guest.most-guessed" : "guest.most", { load: q(max_load_kg, "kg", { digits: 1 }) }),
    ...(max_load_kg !== null && basket_kg !== undefined && basket_kg <= max_load_kg ? [text("guest.baskets", { count: Math.floor((max_load_kg / basket_kg) * 2) / 2 })] : []),
    text("guest.one", { spacing: q(limits.spacing_h, "h") }),
    text("guest.wood"),
  ];
}

function before({ heater, house }: GuestFacts): Text[] {
  const ways = heater.lighting === "top" || (heater.lighting !== "bottom" && heater.gas_exit === "top") ? "top" : heater.lighting === "bottom" || heater.gas_exit === "low" ? "bottom" : "unknown";
  return [
    text("guest.cold"),
    text(house.vented_hood === false ? "guest.fans" : "guest.hood"),
    ...(heater.shut_off_damper === false ? [] : [text(heater.shut_off_damper ? "guest.damper-open" : "guest.damper-if")]),
    ...(heater.bypass_damper ? [text("guest.bypass-open")] : []),
    text("guest.air-open"),
    text("guest.match"),
    text(`guest.lay-${ways}`),
  ];
}

/** Where each thing stands, by what is seen in the firebox. */
function positions(heater: HeaterFacts): PageBlock {
  const row = (id: string, ...cells: string[]): Text[] => [text(`guest.part.${id}`), ...cells.map((cell) => text(`guest.at.${cell}`))];
  return {
    kind: "table",
    cautions: [],
    caption: text("guest.positions"),
    columns: [text("guest.part"), text("guest.when.lighting"), text("guest.when.burning"), text("guest.when.no-flame"), text("guest.when.morning")],
    rows: [
      row("air", "open", "open", "shut", "shut"),
      ...(heater.shut_off_damper === false ? [] : [row(heater.shut_off_damper ? "damper" : "damper-if", "open", "open", "open", "may-shut")]),
      ...(heater.bypass_damper ? [row("bypass", "open", "shut-when-strong", "shut", "shut")] : []),
      ...(heater.grate ? [row("ash-door", "shut", "shut", "shut", "shut")] : []),
    ],
  };
}

const never = (heater: HeaterFacts): Text[] => [
  ...(heater.shut_off_damper === false ? [text("guest.never.air")] : [text("guest.never.damper")]),
  ...["liquids", "rubbish", "things", "ash", "water"].map((id) => text(`guest.never.${id}`)),
];

function whom({ rules, alarms, emergency_number }: GuestFacts): Text[] {
  const builder = rules.find((rule) => rule.call)?.call;
  const rooms = [alarms.co?.room, alarms.smoke?.room].filter((room) => room !== undefined);
  return [
    text("guest.ring.emergency", { number: emergency_number }),
    text("guest.ring.owner"),
    text("guest.ring.sweep"),
    builder ? text("guest.ring.builder-named", { name: verbatim(builder) }) : text("guest.ring.builder"),
    ...(rooms.length > 0 ? [text("guest.alarms", { rooms: rooms.map(verbatim) })] : []),
  ];
}
