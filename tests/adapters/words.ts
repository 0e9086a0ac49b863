/** The adapters' own catalogue and a small one for made-up answers. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { type Reader, renderer } from "../../src/text/render.ts";

export const adapterWords = new Map(
  Object.entries(parse(readFileSync(new URL("../../src/text/adapter.en.yaml", import.meta.url), "utf8")) as Record<string, string>),
);

const own: Record<string, string> = {
  "test.plain": "{words}",
  "test.of": "Of {words}: {figure}.",
  "test.two": "First {one}, then {two}.",
};

export const render = renderer(new Map([["en", new Map([...adapterWords, ...Object.entries(own)])]]));
export const reader: Reader = { locale: "en-GB", system: "metric", timezone: "Europe/London" };
