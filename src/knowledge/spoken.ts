/** The knowledge as a speaker of another language answers it: words and labels of that language beside the English ones. */
import type { Knowledge } from "./load.ts";
import type { Sign, Trouble } from "./schemas.ts";

const made = new WeakMap<Knowledge, Map<string, Knowledge>>();

/** Only what is listened for changes, with the questions it answers; ids, weights and cautions stay. */
export function spokenIn(knowledge: Knowledge, language: string): Knowledge {
  const heard = knowledge.heard.get(language);
  const texts = knowledge.texts.get(language);
  if (language === "en" || !heard || !texts) return knowledge;
  const before = made.get(knowledge)?.get(language);
  if (before) return before;

  const words = (path: string, kind: "words" | "done", english: readonly string[] = []): string[] => [...english, ...(heard.get(`${path}.${kind}`) ?? [])];
  const sign = (path: string, english: Sign): Sign => ({
    ...english,
    ...(english.ask ? { ask: [texts.get(`${path}.ask`), english.ask].filter(Boolean).join(" ") } : {}),
    ...(english.answers
      ? { answers: english.answers.map((answer) => ({ ...answer, label: texts.get(`${path}.answers.${answer.id}.label`) ?? answer.label, words: words(`${path}.answers.${answer.id}`, "words", answer.words) })) }
      : {}),
  });
  const trouble = (english: Trouble): Trouble => ({
    ...english,
    signs: Object.fromEntries(Object.entries(english.signs).map(([id, one]) => [id, sign(`troubles.${english.id}.signs.${id}`, one)])),
  });
  const spoken: Knowledge = {
    ...knowledge,
    troubles: new Map([...knowledge.troubles].map(([id, one]) => [id, trouble(one)])),
    glossary: Object.fromEntries(Object.entries(knowledge.glossary).map(([id, entry]) => [id, { ...entry, words: words(`glossary.${id}`, "words", entry.words) }])),
    upkeep: {
      ...knowledge.upkeep,
      tasks: Object.fromEntries(Object.entries(knowledge.upkeep.tasks).map(([id, task]) => [id, {
        ...task, words: words(`upkeep.${id}`, "words", task.words), done: words(`upkeep.${id}`, "done", task.done),
      }])),
    },
  };
  made.set(knowledge, (made.get(knowledge) ?? new Map<string, Knowledge>()).set(language, spoken));
  return spoken;
}
