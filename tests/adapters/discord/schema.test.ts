/** The same messages and modals against Discord's own public API description (OpenAPI 3.1), where its data file lies beside the project. */
import { existsSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { renderModal } from "../../../adapters/discord/modal.ts";
import { renderDiscord } from "../../../adapters/discord/render.ts";
import { labels, outline } from "../../../adapters/outline.ts";
import { anyAnswer } from "../any-answer.ts";
import { reader, render } from "../words.ts";

const FILE = new URL("../../../../shared/protocols/discord-openapi-subset.json", import.meta.url);

describe.skipIf(!existsSync(FILE))("against the public API description (skipped where its file is absent)", () => {
  const load = () => {
    const spec = JSON.parse(readFileSync(FILE, "utf8"));
    const ajv = new Ajv2020({ strict: false, allErrors: false });
    for (const format of ["snowflake", "nonce", "int32", "int64", "double", "uri", "date-time"]) ajv.addFormat(format, true);
    ajv.addSchema(spec, "spec");
    const check = (name: string) => ajv.compile({ $ref: `spec#/components/schemas/${name}` });
    return { message: check("MessageCreateRequest"), modal: check("ModalInteractionCallbackRequest") };
  };

  test("any answer's messages and modals are what it describes", { timeout: 60_000 }, () => {
    const { message, modal } = load();
    expect(message({ components: [{ type: 10, content: "" }] })).toBe(false);
    fc.assert(
      fc.property(anyAnswer, ({ answer }) => {
        const options = { render, reader, ref: "Abcdefghij_-0123456789" };
        for (const { payload } of renderDiscord(answer, options)) {
          message(payload);
          expect(message.errors).toBeNull();
        }
        for (const form of outline(answer, options).forms) {
          for (let page = 0; page * 5 < form.fields.length; page++) {
            modal({ type: 9, data: renderModal(form, page, "r", labels(options)) });
            expect(modal.errors).toBeNull();
          }
        }
      }),
      { numRuns: 800, seed: 14 },
    );
  });
});
