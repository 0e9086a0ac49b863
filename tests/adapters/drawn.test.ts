/** Files of pictures, and what stands where there are none. */
import { expect, test } from "vitest";
import { withFiles, withoutFiles } from "../../adapters/drawn.ts";
import { type Answer, answer, type Picture, say, verbatim } from "../../src/answer.ts";
import { reader } from "./words.ts";

const picture = (chart: string, file?: string): Picture => ({ chart, data: {}, alt: verbatim(`what ${chart} says`), ...(file ? { file } : {}) });
const withPictures = (...pictures: Picture[]): Answer =>
  answer({ topic: "heat-curve", headline: verbatim("Warm"), blocks: [say(verbatim("Words.")), ...pictures.map((one) => ({ kind: "picture" as const, cautions: [], picture: one }))] }, new Map());
const files = (one: Answer): (string | undefined)[] => one.blocks.flatMap((block) => (block.kind === "picture" ? [block.picture.file] : []));

test("each picture is drawn for this reader; one that cannot be drawn is told and keeps its words", async () => {
  const why: string[] = [];
  const drawn = await withFiles(withPictures(picture("a"), picture("b"), picture("c")), reader, async ({ chart }, to) => {
    expect(to).toBe(reader);
    if (chart === "b") throw new Error("no pen");
    return chart === "c" ? null : `/album/${chart}.png`;
  }, (error) => why.push(String(error)));
  expect(files(drawn)).toEqual(["/album/a.png", undefined, undefined]);
  expect(why).toEqual(["Error: no pen"]);
  expect(drawn.blocks).toHaveLength(4);
});

test("nothing is drawn twice, nor where nobody can draw, nor while an emergency waits", async () => {
  const drawn: string[] = [];
  const draw = async ({ chart }: Picture): Promise<string> => {
    drawn.push(chart);
    return "/new.png";
  };
  expect(files(await withFiles(withPictures(picture("a", "/old.png")), reader, draw))).toEqual(["/old.png"]);
  expect(files(await withFiles(withPictures(picture("a")), reader, undefined))).toEqual([undefined]);
  const urgent = { ...withPictures(picture("a")), emergency: true } as Answer;
  expect(await withFiles(urgent, reader, draw)).toBe(urgent);
  expect(drawn).toEqual([]);
});

test("a photograph goes as it is, in memory; where no file may go its words are left", async () => {
  const photo = { name: "crack.jpg", media_type: "image/jpeg", bytes: new Uint8Array([1]) };
  const sent = await withFiles(withPictures(picture("photo")), reader, async () => photo);
  expect(sent.blocks[1]).toMatchObject({ kind: "picture", picture: { photo } });
  expect(withoutFiles(sent).blocks[1]).not.toHaveProperty("picture.photo");
});

test("where no file may go the words alone are left", () => {
  const bare = withoutFiles(withPictures(picture("a", "/old.png")));
  expect(files(bare)).toEqual([undefined]);
  expect(bare.blocks[1]).toMatchObject({ kind: "picture", picture: { chart: "a", alt: verbatim("what a says") } });
});
