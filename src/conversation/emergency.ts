/**
 * An emergency card as an `Answer`. Needs neither knowledge nor store: its words come from the emergency leaf itself,
 * so an adapter can make it in its own process while everything else hangs.
 */
import { answer, ask, steps, verbatim, type Answer, type Caution } from "../answer.ts";
import { emergencyCard, recogniseDanger, type Danger } from "../emergency/index.ts";
import type { TopicId } from "../topics.ts";

export interface Whereabouts {
  readonly country?: string | null;
  readonly fallback_country?: string | null;
  readonly language?: string;
}

export function emergencyAnswer(danger: Danger, reader: Whereabouts): Answer {
  const card = emergencyCard(danger, reader);
  const cautions = new Map<string, Caution>(card.cautions.map((caution) => [caution.id, { id: caution.id, text: verbatim(caution.text) }]));
  const ids = [...cautions.keys()];
  return answer(
    {
      topic: danger.topic as TopicId,
      emergency: true,
      cautions: ids,
      headline: verbatim(card.headline),
      blocks: [
        // the number stands with the steps, before anything that can be read later
        steps([...card.now, card.numbers].map(verbatim), { cautions: ids }),
        ...(card.never.length > 0 ? [steps(card.never.map(verbatim), { ordered: false, cautions: ids, title: verbatim(card.never_title.replace(/:$/, "")) })] : []),
        ...(card.afterwards.length > 0 ? [steps(card.afterwards.map(verbatim), { ordered: false, cautions: ids, title: verbatim(card.afterwards_title.replace(/:$/, "")) })] : []),
        ...(card.question ? [ask("danger", verbatim(card.question), [], ...ids)] : []),
      ],
    },
    cautions,
  );
}

/** Danger now in this text, answered, or null. */
export function emergencyIn(text: string | undefined, reader: Whereabouts): Answer | null {
  const danger = text ? recogniseDanger(text) : null;
  return danger ? emergencyAnswer(danger, reader) : null;
}
