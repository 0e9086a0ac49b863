/** The catalogues that are not knowledge: Gleed's own sentences and the adapters' few words, one file each a language. */
import { readdir, readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";

const FOLDER = fileURLToPath(new URL("./", import.meta.url));

/** Before the English sentences that stand in place of an id in `sentences.<language>.yaml`. */
export const SENTENCE = "sentence: ";

/** Files named `<language>.yaml` or `<what>.<language>.yaml`, flat id to ICU message. */
export async function loadCatalogues(folder: string = FOLDER): Promise<Map<string, Map<string, string>>> {
  const all = new Map<string, Map<string, string>>();
  for (const file of (await readdir(folder)).filter((name) => name.endsWith(".yaml")).sort()) {
    const language = file.replace(/\.yaml$/, "").split(".").at(-1) ?? "en";
    const texts = parse(await readFile(`${folder}/${file}`, "utf8")) as Record<string, string>;
    all.set(language, new Map([...(all.get(language) ?? []), ...Object.entries(texts).map(([id, words]) => [file.startsWith("sentences.") ? SENTENCE + id : id, String(words)] as const)]));
  }
  return all;
}
