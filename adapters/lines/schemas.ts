/** The two shapes of the outside interface, as zod; their JSON Schemas are shipped under tests/contracts/lines/. */
import { z } from "zod";
import { Records } from "../../src/records/schemas.ts";
import { TOPICS } from "../../src/topics.ts";

const where = { person: z.string().min(1), room: z.string().min(1).describe('"private", or the name of a group') };
export const LineIn = z.union([
  z.strictObject({ ...where, text: z.string() }),
  z.strictObject({ ...where, choose: z.string().describe("id of a choice shown earlier") }),
  z.strictObject({ ...where, form: z.record(z.string(), z.unknown()) }),
  z.strictObject({ ...where, records: Records }),
  z.strictObject({ advance: z.string().describe("ISO 8601 duration; PT0S delivers what is overdue") }),
]);

const topic = z.enum(TOPICS as unknown as [string, ...string[]]);
const named = z.strictObject({ id: z.string(), text: z.string().min(1) });
export const AnswerOut = z
  .strictObject({
    at: z.iso.datetime().optional().describe("only for messages that fell due: when"),
    person: z.string().optional(),
    room: z.string().optional(),
    topic,
    also: z.array(topic),
    hazard: z.boolean().describe("touches something that can hurt someone; then cautions is not empty"),
    emergency: z.boolean().describe("someone may be in danger now; text starts with what to do this minute"),
    cautions: z.array(named),
    headline: z.string().min(1),
    text: z.string().min(1).describe("everything a reader would read, cautions first"),
    causes: z.array(z.strictObject({ id: z.string(), share: z.number().min(0).max(1), because: z.array(z.string()) })),
    question: named.nullable(),
    choices: z.array(z.strictObject({ id: z.string(), label: z.string().min(1) })),
    numbers: z.record(z.string(), z.number()),
    pictures: z.array(z.strictObject({ alt: z.string().min(1), file: z.string() })),
    audience: z.enum(["person", "room"]),
  })
  .refine((answer) => answer.hazard === answer.cautions.length > 0, "a hazard has its cautions, and only a hazard");
export const LineOut = z.union([z.strictObject({ answers: z.array(AnswerOut) }), z.strictObject({ error: z.string().min(1) })]);

export const jsonSchemas = (): Record<"in" | "out", unknown> => ({
  in: z.toJSONSchema(LineIn, { io: "input", unrepresentable: "any" }),
  out: z.toJSONSchema(LineOut, { unrepresentable: "any" }),
});
