/** Words kept as a person wrote them, such as a reminder's, with what they are in English behind them where that person speaks German. */
import type { Context } from "../context.ts";
import { gloss } from "./gloss.ts";

export function inEnglish({ language, text, said }: Pick<Context, "language" | "text" | "said">, words: string): string {
  if (language === "en") return words;
  return words === text ? `${said} ${text}` : `${words} ${gloss(words).text}`;
}
