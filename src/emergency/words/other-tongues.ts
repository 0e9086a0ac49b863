import type { PhraseList, WordList } from "../senses.ts";

export const OTHER_TONGUES: readonly { readonly words: WordList; readonly phrases: PhraseList }[] = [];
