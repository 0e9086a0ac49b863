/** A person's own copy: deciding leaves two empty documents in the answer, and they are filled on the way out, so that no copy is ever stored. */
import { text, verbatim, type Answer, type Block, type Document, type Text } from "../answer.ts";
import { COPY_CSV, COPY_JSON } from "../conversation/topics/copy.ts";
import type { Received } from "../delivery/receive.ts";
import type { Message } from "../message.ts";
import type { Store } from "../records/ports.ts";
import type { FireFacts } from "../records/schemas.ts";

/** networks refuse larger files; pictures are then listed without their content */
const MOST_BYTES = 8_000_000;
const COLUMNS = [
  "lit_at", "load_kg", "species", "moisture_pct_wet", "stack", "lit", "air", "flame_out_at", "air_closed_at", "damper_closed_at", "bed_at_close", "outside_C", "note",
] as const satisfies readonly (keyof FireFacts)[];

export async function withCopy(store: Pick<Store, "personByIdentity" | "exportPerson">, { identity, place }: Pick<Message, "identity" | "place">, received: Received): Promise<Received> {
  const { answer } = received;
  if (place.kind !== "private" || !answer.blocks.some(isCopy)) return received;
  const person = await store.personByIdentity(identity.network, identity.id);
  if (!person) return received;
  const copy = await store.exportPerson(person.id);
  const blocks = answer.blocks.map((block): Block => {
    if (!isCopy(block)) return block;
    return { ...block, document: block.document.name === COPY_JSON ? asJson(block.document, copy) : asTable(block.document, copy) };
  });
  return { ...received, answer: { ...answer, blocks } as Answer };
}

const isCopy = (block: Block): block is Block & { kind: "document" } => block.kind === "document" && (block.document.name === COPY_JSON || block.document.name === COPY_CSV);

function asJson(document: Document, copy: Record<string, unknown>): Document {
  const whole = JSON.stringify(copy, null, 2);
  const words = Buffer.byteLength(whole) <= MOST_BYTES ? whole : JSON.stringify({ ...copy, album: (copy.album as Record<string, unknown>[]).map(({ base64: _, ...one }) => one) }, null, 2);
  return { ...document, body: [{ kind: "text", text: verbatim(words), cautions: [] }] };
}

function asTable(document: Document, { fires }: Record<string, unknown>): Document {
  const rows = (fires as { facts?: Partial<FireFacts> }[]).map(({ facts, ...flat }) => {
    const fire: Partial<FireFacts> = facts ?? (flat as Partial<FireFacts>);
    return COLUMNS.map((column): Text => verbatim(String(fire[column] ?? "")));
  });
  return { ...document, body: [{ kind: "table", columns: COLUMNS.map((column) => verbatim(column)), rows, caption: text("data.copy-csv"), cautions: [] }] };
}
