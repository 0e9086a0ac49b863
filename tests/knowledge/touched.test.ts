/**
 * What a cause makes people touch decides its cautions: each rule names words of its remedies and what then has to stand beside them, as a
 * caution of the cause, of its tree or of the topic, or in its own words. The rules are common practice, no source.
 */
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { TOPIC_CAUTIONS } from "../../src/conversation/cautions.ts";
import { loadKnowledge } from "../../src/knowledge/load.ts";

const knowledge = await loadKnowledge(fileURLToPath(new URL("../../knowledge", import.meta.url)), { languages: [] });

interface Touched {
  readonly about: string;
  /** in what is to be done */
  readonly does?: RegExp;
  /** in the name of the cause */
  readonly named?: RegExp;
  /** one of these cautions */
  readonly cautions?: readonly string[];
  /** or these words */
  readonly says?: RegExp;
}
const RULES: readonly Touched[] = [
  { about: "wood that is dried indoors", does: /\b(two days' wood|brought? (it |wood )?in(doors)?\b|wood indoors|wood dries|dry wood on)/i, cautions: ["hot-surroundings"] },
  { about: "ash that is taken out", does: /\b(ash (is taken |goes |comes )?out\b|take .*\bash\b|their ash|empty the drawer|clear the bars|take out the ash)/i, cautions: ["hot-ash"] },
  { about: "passages that are cleaned", does: /\b(cleanouts?|channels|passages)\b.*\b(clean|open)/i, cautions: ["dust", "hot-ash", "blocked-flue", "tar", "carbon-monoxide"] },
  { about: "a rope, gasket or tape that is renewed", does: /\b(new|change|renew|thicker)\b.{0,40}\b(rope|gasket|tape)\b|\b(rope|gasket)\b.{0,30}\b(changed|renewed|replaced)\b/i, cautions: ["asbestos"] },
  { about: "the chimney top", does: /\b(cap|cowl|pot|flashing|chimney top|taller (top|stack)|height (and place )?of the top|(?<!insect )mesh)\b/i, cautions: ["roof"], says: /\b(nobody (climbs|pokes)|never the roof)/i },
  { about: "raking", does: /\brake\b/i, cautions: ["close-flue", "carbon-monoxide"] },
  { about: "fans", does: /\b(fans?|hood)\b.{0,20}\b(off|runs?)\b/i, cautions: ["extractor"], says: /fans off/i },
  { about: "wood that poisons", does: /\b(painted|glued|treated|cardboard|rubbish)\b/i, cautions: ["never-burn"] },
  { about: "tar", does: /\btars?\b/i, cautions: ["tar"], says: /sweep/i },
  { about: "opening the door on a fire", does: /\b(door (a crack )?first|open(ed)? slowly|door slowly|a crack of a centimetre)\b/i, cautions: ["opening-door"] },
  { about: "lighting again", does: /\b(new|natural) (natural )?firelighter\b/i, cautions: ["no-liquids"] },
  { about: "the flue damper", does: /\bflue damper\b.*\b(shut|close)|\b(shut|close).*\bflue damper\b/i, cautions: ["close-flue", "carbon-monoxide"] },
  { about: "a door that does not hold", named: /^(?!glue).*\b(latch|hinge|gasket|door (seal|not latched)|seal (flat|or latch))\b/i, says: /\bno fire\b|small fires only|no full load/i },
  { about: "a bypass that does not close", named: /\bbypass open or leaking|the bypass is open or leaks|bypass left open\b/i, says: /\bno (full )?fire\b|flue (was|got|is)? ?(very|far too) hot|moves the plate/i },
  { about: "a leak of flue gas", named: /^(?!bypass).*\b(crack|leak|leaking|open joint|shared flue|same flue)\b/i, cautions: ["carbon-monoxide", "smoke-in-room", "oven-smoke"] },
  { about: "an animal in the flue", named: /\b(nest|birds?|squirrel|raccoon|bats|blocked flue)\b/i, does: /./, says: /\b(protected|authority|flown|wildlife|rescue|looks? (through|whether))\b/i },
  { about: "more or bigger fires", does: /\b(second fire|full loads?|bigger fire)\b/i, cautions: ["over-firing", "close-flue"], says: /\bnever (over|a bigger)|under the|at most|no full load|weigh/i },
  { about: "work at the heater", does: /\b(brush|(?<!not )scrape|sponge|graphite|strip of paper|paper test|washers|new rope|new tape)\b/i, cautions: ["glass-cold", "hot-ash"], says: /\bcold\b/i },
  { about: "a motor", named: /\bmotor\b/i, cautions: ["power-cut", "carbon-monoxide"] },
  { about: "very hot iron and glass", does: /\b(glove|tongs|poker)\b/i, cautions: ["burns", "opening-door", "over-firing"] },
];

const causes = [...knowledge.troubles.values()].flatMap((trouble) => Object.entries(trouble.causes).map(([id, cause]) => {
  const done = [...cause.now, ...cause.before_next_fire];
  return {
    name: `${trouble.id}: ${id}`, title: cause.title, done,
    says: [...trouble.first_of_all, ...done, ...(cause.no_fire ? ["no fire"] : [])].join("\n"),
    cautions: new Set([...trouble.cautions, ...cause.cautions, ...(TOPIC_CAUTIONS[trouble.id] ?? [])]),
  };
}));
const touches = ({ does, named }: Touched, cause: (typeof causes)[number]): boolean =>
  (named?.test(cause.title) ?? true) && (does === undefined || cause.done.some((sentence) => does.test(sentence)));

describe.each(RULES.map((rule) => [rule.about, rule] as const))("%s", (_, rule) => {
  const touched = causes.filter((cause) => touches(rule, cause));

  it("is touched by some cause", () => expect(touched.length).toBeGreaterThan(0));

  it("has its caution everywhere", () => {
    const bare = touched.filter(({ cautions, says }) => !(rule.cautions ?? []).some((id) => cautions.has(id)) && !(rule.says?.test(says) ?? false));
    expect(bare.map(({ name }) => name)).toEqual([]);
  });
});
