/** Every tree under knowledge/troubles/, walked along every path of answers with empty records. */
import { describe, expect, it } from "vitest";
import { emergencyCard } from "../../src/emergency/card.ts";
import type { EmergencyKind } from "../../src/emergency/index.ts";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import type { Cause, Trouble } from "../../src/knowledge/schemas.ts";
import type { HeaterFacts } from "../../src/records/schemas.ts";
import { FACTS } from "../../src/trouble/facts.ts";
import { walk, type Observations } from "../../src/trouble/walk.ts";
import { answersOf, everyPath, type Path } from "../../src/trouble/every-path.ts";

const knowledge = await loadKnowledge(new URL("../../knowledge", import.meta.url).pathname);
const troubles = [...knowledge.troubles.values()];
const paths = new Map<string, readonly Path[]>();
const pathsOf = (trouble: Trouble): readonly Path[] => {
  const found = paths.get(trouble.id) ?? everyPath(trouble);
  paths.set(trouble.id, found);
  return found;
};

const MOST_QUESTIONS = 8;
const FITTED: HeaterFacts = {
  kind: "bell", shut_off_damper: true, bypass_damper: true, grate: true, outside_air: true, lighting: "top", gas_exit: "top", oven: "black",
  flue_on_outside_wall: true,
};
const PLAIN: HeaterFacts = {
  kind: "channel", shut_off_damper: false, bypass_damper: false, grate: false, outside_air: false, lighting: "bottom", gas_exit: "low",
  oven: "none", flue_on_outside_wall: false,
};
/** Smoke, smell, alarm and fire: danger is asked about before anything else. */
const GATED = [
  "smoke-at-lighting", "smoke-on-opening", "smoke-mid-burn", "fire-dies", "over-firing", "hot-surface", "cracks", "co-alarm", "chimney-fire",
];

describe.each(troubles.map((trouble) => [trouble.id, trouble] as const))("the tree %s", (_, trouble) => {
  it.each([["nothing known of the heater", undefined], ["a heater with everything", FITTED], ["a heater with nothing", PLAIN]] as const)(
    "ends within eight questions and asks none twice: %s",
    (_heater, heater) => {
      const found = heater ? everyPath(trouble, heater, {}, 1500) : pathsOf(trouble);
      for (const path of found) {
        expect(path.asked.length, path.asked.join(", ")).toBeLessThanOrEqual(MOST_QUESTIONS);
        expect(new Set(path.asked).size, path.asked.join(", ")).toBe(path.asked.length);
        expect(path.leads !== null || path.end.stop?.emergency, `no end at ${path.asked.join(", ")}`).toBeTruthy();
      }
    },
  );

  it("lets every cause win by its own questions", () => {
    const led = new Set(pathsOf(trouble).map((path) => path.leads));
    const never = Object.entries(trouble.causes).filter(([id, cause]) => !led.has(id) && !winsWithRecords(trouble, id, cause));
    expect(never.map(([id]) => id)).toEqual([]);
  });

  it("ends in no hazard without a caution as grave as it", () => {
    for (const path of pathsOf(trouble)) {
      const cause = path.leads === null ? undefined : trouble.causes[path.leads];
      if (!cause || !(cause.no_fire || cause.hazard === "high" || cause.hazard === "emergency")) continue;
      const levels = [...trouble.cautions, ...cause.cautions].map((id) => knowledge.cautionEntries[id]?.level);
      expect(levels.includes("high") || levels.includes("emergency"), `${path.leads} names ${levels.join(", ")}`).toBe(true);
    }
  });

  it("says who clears a fire that is forbidden", () => {
    const forbidding = Object.entries(trouble.causes).filter(([, cause]) => cause.no_fire);
    const silent = forbidding.filter(([, { call, before_next_fire }]) => call.length + before_next_fire.length === 0);
    expect(silent.map(([id]) => id)).toEqual([]);
  });

  it("names a source for every claim", () => {
    const sources = [...trouble.sources, ...Object.values(trouble.causes).map((cause) => cause.source)];
    for (const source of sources) expect(source).toMatch(SOURCE);
  });

  it("reads only facts that records hold", () => {
    const unknown = Object.entries(trouble.signs).filter(([, sign]) => sign.record !== undefined && !Object.hasOwn(FACTS, sign.record));
    expect(unknown.map(([id, sign]) => `${id}: ${sign.record}`)).toEqual([]);
  });

  it("stops only at emergencies that have a card", () => {
    for (const sign of Object.values(trouble.signs)) {
      for (const { emergency } of Object.values(sign.stop ?? {})) {
        if (!emergency) continue;
        const card = emergencyCard({ kind: emergency as EmergencyKind, certainty: "sure", topic: trouble.id, also: [] }, {});
        expect(card.now.length, emergency).toBeGreaterThan(0);
      }
    }
  });
});

describe.each(GATED.filter((id) => knowledge.troubles.has(id as never)))("danger in the tree %s", (id) => {
  const trouble = knowledge.troubles.get(id as never) as Trouble;
  const records = [["no record", {}], ["records that leave no doubt", withEveryRecord(trouble)]] as const;
  it.each(records)("is asked about first, with %s", (_, seen) => {
    const first = walk(trouble, {}, seen, []).ask;
    expect(first, "nothing is asked").not.toBeNull();
    const ends = Object.values(trouble.signs[first ?? ""]?.stop ?? {});
    expect(ends.some((end) => end.emergency), `${first} leads to no emergency`).toBe(true);
  });

  it("ends the tree at once", () => {
    const first = walk(trouble, {}, {}, []).ask ?? "";
    const danger = Object.entries(trouble.signs[first]?.stop ?? {}).find(([, end]) => end.emergency)?.[0] ?? "";
    expect(answersOf(trouble, first)).toContain(danger);
    const after = walk(trouble, {}, { [first]: { answer: danger, from: "person" } }, [first]);
    expect(after.stop?.emergency).toBeTruthy();
    expect(after.ask).toBeNull();
  });
});

describe("what the trees and how-tos tell a person to do", () => {
  const told = [
    ...troubles.flatMap((trouble) => [
      ...trouble.first_of_all,
      ...Object.values(trouble.causes).flatMap((cause) => [...cause.now, ...cause.before_next_fire]),
    ]),
    ...[...knowledge.howtos.values()].flatMap((howto) => howto.parts.flatMap((part) => [...(part.steps ?? []), ...(part.text ?? [])])),
  ];

  it("never lets the flue damper be closed but over a black bed", () => {
    const opened = /\bflue damper (stays?|stands|is)? ?(fully?)? ?open\b/gi;
    const closing = told
      .map((words) => words.replace(opened, ""))
      .filter((words) => /\b(clos|shut)\w*\b[^.]*\bflue damper\b|\bflue damper\b[^.]*\b(clos|shut)\w*\b/i.test(words));
    expect(closing.filter((words) => !/\b(never|not|nobody|black|cold|leave it open)\b/i.test(words))).toEqual([]);
    expect(closing.length, "the pattern finds nothing any more").toBeGreaterThan(3);
  });

  it("sends nobody up the roof and pours no water on a fire", () => {
    expect(told.filter((words) => /\b(climb|go up|get on)\b/i.test(words) && !/\b(nobody|never|not?)\b/i.test(words))).toEqual([]);
    const water = /\b(pour|throw|spray|splash|tip)\w*\b[^.]*\bwater\b|\bwater (on|onto|into|over) (the )?(fire|ember|flame|heater|flue)/i;
    expect(told.filter((words) => water.test(words) && !/\b(no|never)\b[^.]*\bwater\b/i.test(words))).toEqual([]);
  });

  it("declares nothing safe", () => {
    expect(told.filter((words) => /\b(it|heater|flue|alarm|that) (is|are) (quite |perfectly )?safe\b/i.test(words))).toEqual([]);
  });
});

describe.each([...knowledge.howtos.values()].map((howto) => [howto.id, howto] as const))("the how-to %s", (_, howto) => {
  it("names a source for every part and a caution where it can hurt", () => {
    for (const part of howto.parts) expect(part.source).toMatch(SOURCE);
    for (const source of howto.sources) expect(source).toMatch(SOURCE);
    if (howto.hazard === "high" || howto.hazard === "emergency") {
      expect(howto.cautions.some((id) => ["high", "emergency"].includes(knowledge.cautionEntries[id]?.level ?? "none"))).toBe(true);
    }
  });
});

/** A name, not a placeholder. */
const SOURCE = /^(?!.*\b(todo|tbd|fixme|unknown|none|somewhere)\b).*[a-z]{4}/is;

/** A cause that only records can bring to the front: its silent signs at their most telling, the rest by the walker's own questions. */
function winsWithRecords(trouble: Trouble, id: string, cause: Cause): boolean {
  const known: Observations = Object.fromEntries(
    Object.entries(cause.weighs)
      .filter(([sign]) => trouble.signs[sign]?.ask === undefined)
      .map(([sign, weights]) => [sign, { answer: mostTelling(trouble, sign, weights), from: "record" as const, args: {} }]),
  );
  const wanted = Object.entries(cause.when ?? {}).map(([key, value]) => [key, Array.isArray(value) ? value[0] : value]);
  const heater: HeaterFacts = Object.fromEntries(wanted);
  return Object.keys(known).length > 0 && everyPath(trouble, heater, known, 2000).some((path) => path.leads === id);
}

function mostTelling(trouble: Trouble, sign: string, weights: Readonly<Record<string, number>>): string | number {
  const [key] = Object.entries(weights).reduce((best, entry) => (entry[1] > best[1] ? entry : best));
  const kind = trouble.signs[sign]?.kind;
  return kind === "yes-no" || kind === "choice" ? key : Number(key);
}

/** Every sign that records can answer, at the value that speaks most for the likeliest cause. */
function withEveryRecord(trouble: Trouble): Observations {
  const likeliest = Object.values(trouble.causes).reduce((best, cause) => (cause.prior > best.prior ? cause : best));
  return Object.fromEntries(
    Object.entries(trouble.signs)
      .filter(([sign, { record }]) => record !== undefined && likeliest.weighs[sign] !== undefined)
      .map(([sign]) => [sign, { answer: mostTelling(trouble, sign, likeliest.weighs[sign] ?? {}), from: "record" as const, args: {} }]),
  );
}
