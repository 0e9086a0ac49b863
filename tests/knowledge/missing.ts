/**
 * `node tests/knowledge/missing.ts <language> [file]`: what is wrong in `knowledge/<language>/`, and which strings are still said in English,
 * by file. With a file, such as `troubles/black-glass.yaml`, each string of it. Ends with 1 when something is wrong.
 */
import { fileURLToPath } from "node:url";
import { KnowledgeError, loadKnowledge } from "../../src/knowledge/load.ts";
import { readTranslation } from "../../src/knowledge/translation.ts";

const FOLDER = fileURLToPath(new URL("../../knowledge", import.meta.url));
const [language, only] = process.argv.slice(2);
if (!language || !/^[a-z]{2}$/.test(language)) {
  console.error("Give a language in two letters, such as: node tests/knowledge/missing.ts de");
  process.exit(2);
}

const { originals } = await loadKnowledge(FOLDER, { languages: [] }).catch((error: unknown) => {
  console.error(error instanceof KnowledgeError ? error.message : error);
  process.exit(1);
});
const { missing, problems, texts } = await readTranslation(FOLDER, language, originals);
const meant = only?.replaceAll("\\", "/").replace(new RegExp(`^.*knowledge/(?:${language}/)?`), "").replace(/^\.\//, "");
const of = (file: string): boolean => meant === undefined || file === meant || file === `${meant}.yaml`;
if (meant !== undefined && !originals.some(({ file }) => of(file))) {
  console.error(`There is no knowledge/${meant}. There are: ${originals.map(({ file }) => file).join(", ")}`);
  process.exit(2);
}

const wrong = problems.filter((problem) => meant === undefined || problem.includes(`knowledge/${language}/${meant}`));
for (const problem of wrong) console.log(`wrong: ${problem}`);
for (const { file } of originals.filter((one) => of(one.file))) {
  const here = missing.filter((one) => one.file === file);
  if (meant === undefined) console.log(`${String(here.length).padStart(5)} missing in ${file}`);
  else for (const { place, english } of here) console.log(`missing: ${place}: ${english}`);
}
const left = missing.filter(({ file }) => of(file)).length;
console.log(`${wrong.length} wrong, ${left} missing, ${texts.size} in ${language} in all`);
process.exitCode = wrong.length > 0 ? 1 : 0;
