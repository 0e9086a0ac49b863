/** A drawn picture in a room: uploaded (encrypted where the room is), shown as m.image with its words; the words alone where that fails. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { MatrixClient } from "matrix-js-sdk";
import { afterAll, expect, test } from "vitest";
import { type ShowDeps, show } from "../../../adapters/matrix/show.ts";
import { answer, say, verbatim } from "../../../src/answer.ts";
import { silent } from "../../../src/delivery/log.ts";
import { tinyPng } from "../../album/tiny-png.ts";
import { reader, render } from "../words.ts";

const TINY_PNG = tinyPng();
const ALT = "Warmest at ten in the evening, still warm at noon.";
const warm = answer(
  { topic: "heat-curve", headline: verbatim("Warmest at ten"), blocks: [say(verbatim("Words.")), { kind: "picture", cautions: [], picture: { chart: "heat-curve", data: {}, alt: verbatim(ALT) } }] },
  new Map(),
);
const folder = mkdtempSync(join(tmpdir(), "matrix-pictures-"));
const file = join(folder, "heat-curve.png");
writeFileSync(file, TINY_PNG);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Sent {
  readonly content: Record<string, unknown>;
}

async function shown(draw: ShowDeps["draw"], { is_encrypted = false, closed = false } = {}) {
  const sent: Sent[] = [];
  const uploads: { bytes: Buffer; type: string | undefined }[] = [];
  const client = {
    async uploadContent(blob: Blob, { type }: { type?: string }) {
      if (closed) throw new Error("M_TOO_LARGE");
      uploads.push({ bytes: Buffer.from(await blob.arrayBuffer()), type });
      return { content_uri: "mxc://home.example/picture" };
    },
  } as unknown as MatrixClient;
  const send = async (_room: string, _type: string, content: object): Promise<string> => `$${sent.push({ content: content as Record<string, unknown> })}`;
  const post = { until: send, once: send, redact: async () => {} } as unknown as ShowDeps["post"];
  const rows: ShowDeps["rows"] = { live: () => null, setLive: () => {}, setShown: () => {} };
  await show(
    { client, post, rows, render, now: () => 0, log: silent, ...(draw ? { draw } : {}) },
    { answer: warm, reader, room_id: "!r", person: "@ana:home.example", key: "$1", is_encrypted, after: 1, state: { open: [], form: null, paused: null }, in_place: false, relation: null, once: false },
  );
  return { uploads, contents: sent.map(({ content }) => content) };
}

test("in an open room the file itself, with name, kind, size and its words", async () => {
  const { uploads, contents } = await shown(async () => file);
  expect(uploads).toEqual([{ bytes: Buffer.from(TINY_PNG), type: "image/png" }]);
  const image = contents.find((content) => content.msgtype === "m.image");
  expect(image).toMatchObject({ body: ALT, filename: "figure.png", url: "mxc://home.example/picture", info: { mimetype: "image/png", size: TINY_PNG.length, w: 2, h: 1 } });
});

test("a photograph of the album: its own bytes, kind and name, its words as description", async () => {
  const photo = { name: "crack-2026-11-25-180000.jpg", media_type: "image/jpeg", bytes: new Uint8Array([0xff, 0xd8, 0xff]) };
  const { uploads, contents } = await shown(async () => photo);
  expect(uploads).toEqual([{ bytes: Buffer.from(photo.bytes), type: "image/jpeg" }]);
  expect(contents.find((content) => content.msgtype === "m.image")).toMatchObject({ body: ALT, filename: photo.name, info: { mimetype: "image/jpeg", size: 3 } });
  const sealed = await shown(async () => photo, { is_encrypted: true });
  expect(sealed.uploads[0]?.bytes.equals(Buffer.from(photo.bytes))).toBe(false);
});

test("in an encrypted room only ciphertext leaves, and neither name nor kind", async () => {
  const { uploads, contents } = await shown(async () => file, { is_encrypted: true });
  expect(uploads).toHaveLength(1);
  expect(uploads[0]?.type).toBe("application/octet-stream");
  expect(uploads[0]?.bytes.includes(Buffer.from("PNG"))).toBe(false);
  const image = contents.find((content) => content.msgtype === "m.image");
  expect(image).toMatchObject({ body: ALT, file: { url: "mxc://home.example/picture", v: "v2", key: { alg: "A256CTR" } } });
  expect(image).not.toHaveProperty("url");
});

test.each<[string, ShowDeps["draw"], boolean]>([
  ["nobody draws", undefined, false],
  ["drawing fails", () => Promise.reject(new Error("no pen")), false],
  ["it cannot be drawn", async () => null, false],
  ["the homeserver refuses the upload", async () => file, true],
])("when %s its words stand for it", async (_, draw, closed) => {
  const { contents } = await shown(draw, { closed });
  expect(contents.some((content) => content.msgtype === "m.image")).toBe(false);
  expect(contents.map((content) => String(content.body)).join("\n")).toContain(ALT);
});
