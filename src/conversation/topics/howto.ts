/** Any how-to that has a file under knowledge/howtos/: its parts, as far as they fit this heater. */
import { ask, heading, say, steps, text, type Block } from "../../answer.ts";
import type { HowTo } from "../../knowledge/schemas.ts";
import { holds } from "../../trouble/walk.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { batchBlocks } from "./batches.ts";
import { ladderBlocks } from "./first-fires.ts";
import { builderWords, callLine } from "./parts.ts";

export function howtoOutcome(context: Context, howto: HowTo): Outcome {
  const facts = context.heater?.facts ?? {};
  const path = `howtos.${howto.id}`;
  const missing = new Set<string>();
  const named = howto.parts.filter(({ about }) => about?.some((words) => holdsWords(context.text, words)));
  const elsewhere: number[] = [];
  const body: Block[] = howto.parts.flatMap((part, i) => {
    const fits = holds(part.when, facts);
    if (fits === null) for (const key of Object.keys(part.when ?? {})) if (facts[key as keyof typeof facts] === undefined && part.unknown === "ask") missing.add(key);
    if (fits === false || (fits === null && part.unknown === "hide")) return [];
    if (named.length > 0 && part.about && part.title && !named.includes(part)) {
      elsewhere.push(i);
      return [];
    }
    const title = part.title === undefined ? undefined : text(`${path}.parts.${i}.title`);
    return blocks(
      title && !part.steps && heading(title),
      ...(part.text ?? []).map((_, k) => say(text(`${path}.parts.${i}.text.${k}`), ...part.cautions)),
      part.steps && steps(part.steps.map((_, k) => text(`${path}.parts.${i}.steps.${k}`)), { ...(title ? { title } : {}), ordered: part.ordered, cautions: part.cautions }),
    );
  });
  const unknown = [...missing][0];
  return {
    draft: {
      topic: howto.id,
      cautions: howto.cautions,
      headline: text(`${path}.headline`),
      blocks: blocks(...(ON_LADDER.has(howto.id) ? ladderBlocks(context) : []), ...(howto.id === "reload" ? batchBlocks(context) : []), ...body, elsewhere.length > 0 && steps(elsewhere.map((i) => text(`${path}.parts.${i}.title`)), { title: text("howto.elsewhere"), ordered: false }), ...builderWords(context), callLine(context, howto.call, howto.cautions), unknown && ask(`fact:${unknown}`, text(`fact.ask.${unknown}`), factChoices(unknown))),
    },
  };
}

/** `words` are small letters with single blanks between them, as a part's `about` has them */
const holdsWords = (said: string, words: string): boolean => ` ${said.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ")} `.includes(` ${words} `);

const SAME_TALK_MS = 3_600_000;
/** "After a long rest": one of the parts of the how-to told last, asked for by its words. */
export function moreOfHowto({ state, text: said, knowledge, now_ms }: Context): HowTo["id"] | null {
  const howto = state.topic && now_ms - (state.topic_at_ms ?? 0) < SAME_TALK_MS && said.length <= 60 ? knowledge.howtos.get(state.topic) : undefined;
  return howto?.parts.some(({ about }) => about?.some((words) => holdsWords(said, words))) ? howto.id : null;
}

/** What a heater on its first fires, or back from a rest, does with less than is told here. */
const ON_LADDER: ReadonlySet<HowTo["id"]> = new Set<HowTo["id"]>(["first-fires", "deep-cold", "mild-weather", "reload"]);

const FACT_VALUES: Readonly<Record<string, readonly string[]>> = {
  lighting: ["top", "bottom", "unknown"], gas_exit: ["top", "low", "unknown"], oven: ["none", "black", "white"], kind: ["channel", "bell", "contraflow", "mixed", "unknown"],
  facing_material: ["brick", "tile", "soapstone", "render", "stone"],
};

/** Choices for one fact of the heater; picking one writes it down. */
export const factChoices = (key: string) =>
  (FACT_VALUES[key] ?? ["true", "false"]).map((value) => ({ id: `fact:${key}=${value}`, label: text(FACT_VALUES[key] ? `fact.${key}.${value}` : value === "true" ? "yes" : "no") }));
