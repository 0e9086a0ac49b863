/**
 * Somebody who lives through a written case and answers what a tree asks, in the case's own plain words. Which of the case's answers
 * speaks to which question is set down here; the words are then read by `answerTo`, as any typed answer is.
 */
export interface Case {
  readonly trouble: string;
  readonly now: string;
  readonly records: Readonly<Record<string, unknown>>;
  readonly story: string;
  readonly answers: Readonly<Record<string, string>>;
  readonly cause: string;
}

/** What the person says to the question; undefined when the case holds nothing about it. */
export function saidTo({ trouble, answers }: Pick<Case, "trouble" | "answers">, sign: string): string | undefined {
  const asked = SHEET[trouble]?.[sign] ?? USUAL[sign];
  return typeof asked === "string" ? answers[asked] : asked?.(new Answers(answers));
}
/** Whether the sheet knows the question at all. */
export const onSheet = (trouble: string, sign: string): boolean => (SHEET[trouble]?.[sign] ?? USUAL[sign]) !== undefined;

type Asked = string | ((of: Answers) => string | undefined);

class Answers {
  readonly all: Readonly<Record<string, string>>;
  constructor(all: Readonly<Record<string, string>>) {
    this.all = all;
  }
  get(key: string): string | undefined {
    return this.all[key];
  }
  /** the answer, when it says this */
  when(key: string, says: RegExp): string | undefined {
    const text = this.all[key];
    return text !== undefined && says.test(text) ? text : undefined;
  }
  number(key: string): number {
    return Number.parseFloat(this.all[key] ?? "");
  }
  share_pct(): number {
    const [, load, most] = /([\d.]+) kg of ([\d.]+) kg/.exec(this.all.load ?? "") ?? [];
    return (100 * Number(load)) / Number(most);
  }
}

const load: Asked = (of) => (Number.isFinite(of.share_pct()) ? `about ${Math.round(of.share_pct())} %` : of.get("load"));
const bypassLeftOpen: Asked = (of) => (of.when("bypass", /forgot|still open|whole time|^open$|does not/) ? "yes" : of.when("bypass", /closed/) ? "no" : undefined);
const bedAtClose: Asked = (of) => of.get("bed when the damper was closed") ?? /over a (\w+) bed/.exec(of.get("flue damper") ?? "")?.[1] ?? (of.when("flue damper", /^open|there is none/) ? "it was never closed" : of.get("flue damper"));
const moistureOrHiss: Asked = (of) => (of.when("moisture", /know/) && of.when("hissing ends", /^yes/) ? "the ends hissed" : of.get("moisture"));
const fanRuns: Asked = (of) => (of.when("hood or fans", /\bon\b|boost/) ? "yes" : of.when("hood or fans", /none|nothing|off/) ? "no" : undefined);
const high_C = (of: Answers): number => Number(/(-?\d+)(?: to (-?\d+))? °C/.exec(of.get("outdoors") ?? "")?.slice(1).filter(Boolean).at(-1));
const low_C = (of: Answers): number => Number(/(-?\d+)/.exec(of.get("outdoors") ?? "")?.[1]);
const laid: Asked = (of) => (of.number("thickest pieces") > 12 ? "very thick logs" : of.get("how it was laid"));

const USUAL: Readonly<Record<string, Asked>> = {
  "feeling-ill": "anyone ill or an alarm", ill: "anyone ill or an alarm", danger: "anyone ill or an alarm",
  moisture: "moisture", air: "air", "load-share": load, sweep: "swept", channels: "channels cleaned", lit: "lit from", stack: "how it was laid",
  outside: (of) => `${high_C(of)} °C`, "outside-high": (of) => `${high_C(of)} °C`, rest: "time since the fire before", bypass: bypassLeftOpen, fuel: "fuel",
  where: "where", since: "since", fans: fanRuns,
};

const SHEET: Readonly<Record<string, Readonly<Record<string, Asked>>>> = {
  "back-puff": { people: "anyone ill or an alarm", before: "before", beat: "beat", smoulder: "smoke in the firebox", "smoky-lately": "drawn badly lately" },
  "black-glass": { hissing: "hissing ends", "near-glass": (of) => of.get("wood closer than a hand") ?? of.get("wood near the glass") },
  "charcoal-left": { raked: "raked", bed: bedAtClose, ash: "ash before lighting", pieces: "thickest pieces" },
  "chimney-fire": {
    now: () => "it is past, the fire service has been",
    deposit: (of) => of.get("fell down") ?? of.get("soot before"),
    style: (of) => (of.share_pct() > 105 ? "very fierce, more than the full load" : of.when("air", /half|shut/) ? "air turned down" : of.share_pct() < 50 ? "small fires" : "bright, air open"),
    besides: (of) => of.get("other fires") ?? of.when("what was burnt", /cardboard|paper|tree/) ?? "neither",
  },
  "co-alarm": {
    sound: (of) => of.when("sound", /chirp/) ?? "it is over, the house has been measured",
    bed: bedAtClose, "other-burner": (of) => (of.when("other fuel appliances", /none/) ? "no" : of.get("other fuel appliances") && "yes"),
    "smoke-seen": (of) => of.get("where"), drew: "drawn badly lately", "alarm-old": "alarm date",
  },
  "cold-morning": {
    face: "face in the morning", moisture: moistureOrHiss,
    closed: (of) => of.when("air", /all night/) ?? (of.when("flue damper", /all night/) ? "air shut, the flue damper stayed open all night" : "air when the flames had gone, damper over a black bed"),
    fire: (of) => of.when("flue during the fire", /hot/) && "the flue got very hot" || (bypassLeftOpen as (of: Answers) => string | undefined)(of) === "yes" && "the bypass stayed open"
      || (of.number("flames lasted") < 45 ? "fierce and over quickly" : of.number("flames lasted") > 140 ? "lazy, dull flames" : "bright flames for an hour or two"),
  },
  "cold-smell": { smell: "what comes out", fans: "fans", shut: "damper and air between fires", weather: "weather", others: "other fires", animals: "animals" },
  cracks: {
    leak: (of) => of.when("soot", /^yes/) && "soot" || of.when("growing", /leaning/) && "it leans" || "none of these",
    width: "width",
    came: (of) => (of.when("heater built", /2026/) ? "in its first winter" : of.share_pct() > 105 ? "after an oversized fire" : of.when("growing", /^yes/) && "it grows"),
  },
  "damp-flue": { time: "when", look: "look", "outside-wall": "outwall", new: "new" },
  "door-leak": { paper: "paper test", seal: "seal", play: "handle and door" },
  "fire-dies": {
    died: (of) => of.when("minutes", /fan/) ?? (of.number("minutes") < 10 ? "when the kindling had burnt" : "later, logs charred"),
    moisture: moistureOrHiss, stack: laid, match: "match in the flue",
  },
  "first-fire-smell": { smell: "smell", "first-fires": "first fires", "new-thing": "anything new" },
  "hazy-glass": {
    pane: () => "no", wipes: "wipes off", heat: "roaring fires",
    cleaner: (of) => (of.when("steel wool or cleaners", /^(no|never)/) ? "nothing" : of.get("steel wool or cleaners")),
  },
  "heavy-soot": { texture: "texture" },
  "high-wood-use": {
    compare: "compare", changed: "different", morning: "heater after twelve hours", "flame-time": "flames lasted",
    "left-open": "air after the fire", bypass: (of) => of.when("bypass", /does not/) ?? (of.when("bypass", /closed/) ? "yes" : undefined),
  },
  "hot-surface": {
    scorch: (of) => of.when("things near", /brown|scorch/) ?? "neither",
    temperature: "temperature",
    loads: (of) => of.when("fires a day", /two/) && "two loads, five hours apart" || (of.number("flames lasted") < 50 ? "it roared" : of.share_pct() > 105 ? "more than a full load" : "one usual load"),
    since: "new",
  },
  "nest-in-flue": { what: "what", season: "season", cap: "cap", storm: "storm" },
  noise: {
    sound: "sound", moment: "when", place: "place", paper: (of) => of.when("paper test", /slips/) && "yes", fans: (of) => of.when("fans off and window", /calmer/) && "yes",
    sparks: (of) => (of.when("seen afterwards", /nothing/) ? "no" : of.get("seen afterwards") && "yes"),
  },
  "oven-trouble": { what: "what", "oven-kind": "kind", moment: "when", "oven-damper": "oven damper", door: "oven door" },
  "over-firing": {
    "flue-fire": "roar at the top",
    open: (of) => of.when("ash door", /open/) && "the ash door" || of.when("door latched", /^no/) && "the fire door is not latched" || of.when("bypass", /forgot|open the whole/) && "the bypass" || "only the air at the door",
    wood: (of) => of.when("fuel", /pallet/) ?? (of.number("thickest pieces") < 5 ? "split pieces under 5 cm" : "usual split logs"),
    weather: (of) => of.get("weather") ?? (low_C(of) <= -12 ? "hard frost" : "neither"),
  },
  "room-too-warm": {
    burnt: (of) => (of.when("fires a day", /two/) ? "two fires" : of.share_pct() < 60 ? "half a load" : "one full load"),
    gains: (of) => of.when("sun", /full sun/) ?? of.when("other heating", /runs/) ?? "nothing",
    where: (of) => of.when("inner doors", /shut|closed/) && "only the heater's room" || "the whole house",
  },
  "slow-ignition": {
    looks: (of) => of.when("hissing ends", /^yes/) && "the ends hissed" || of.when("kindling burnt well", /gone/) && "the kindling was gone" || of.when("kindling burnt well", /slowly|lazily/) && "lazy flames"
      || of.when("kindling burnt well", /^yes/) && "the kindling burnt brightly, the logs hardly took it" || undefined,
    kindling: "kindling", moisture: moistureOrHiss,
    pieces: (of) => (of.number("thickest pieces") > 12 ? "logs over 12 cm" : of.when("how it was laid", /tight/) ?? "pieces of 9 cm with gaps"),
    air: (of) => of.when("air", /third|half|shut/) ?? of.when("ash before lighting", /bars/) ?? "yes, all open",
    match: "match before lighting",
    "wood-place": (of) => of.get("wood in the house"),
  },
  "smoke-at-lighting": {
    check: (of) => of.when("damper and bypass both open", /pushed in|bypass shut/) ?? of.when("hood or fans", /\bon\b/) ?? (of.get("opening a window") && "an open window stops it") ?? of.when("fell down", /^yes/) ?? "none of these",
    since: (of) => (of.when("worked before", /^yes/) ? "worked last time, today not" : of.get("worked before")), how: "when", match: "match before lighting",
  },
  "smoke-mid-burn": {
    fans: (of) => of.when("what started", /dryer|hood|fan/) ?? (of.when("opening a window", /stop/) && "an open window stops it") ?? "neither",
    when: (of) => of.get("when") ?? of.when("weather", /storm|gust/),
    "first-fires": (of) => of.get("first fires of the season") ?? "no",
  },
  "smoke-on-opening": {
    phase: "phase",
    how: (of) => of.when("air before opening", /half/) && "the air was half" || of.get("how it was opened"),
    outdoors: (of) => of.when("hood or fans", /\bon\b/) ?? of.when("weather", /storm/) ?? (high_C(of) >= 10 ? of.get("outdoors") : "none of these"),
    "load-share": (of) => (of.when("where the wood lay", /door/) ? "wood close to the door" : (load as (of: Answers) => string)(of)),
  },
  "stuck-damper": { now: "fire or glow now", handle: "handle", type: "kind" },
  "uneven-heat": {
    which: (of) => of.when("side", /behind/) ?? of.get("side"), fire: (of) => of.get("load position") ?? (of.share_pct() < 50 ? "a small load" : undefined),
    bypass: (of) => of.when("bypass", /does not|open/) ?? of.get("bypass"),
  },
  "visible-smoke": { colour: "colour", time: "when", stack: laid },
};
