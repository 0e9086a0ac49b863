/** Pictures on their way out: asked for as late as can be; where drawing fails, the picture's words stand. */
import type { Answer, Block, Photo, Picture } from "../src/answer.ts";
import type { Reader } from "../src/text/render.ts";

/** Gives the file of a picture, drawn for this reader, or a photograph itself; null or a rejection when it cannot be had. */
export type Drawn = (picture: Picture, reader: Reader) => Promise<string | Photo | null>;

const isBare = (block: Block): block is Extract<Block, { kind: "picture" }> =>
  block.kind === "picture" && block.picture.file === undefined && block.picture.photo === undefined;

/** The answer with the file of each picture that could be drawn. An emergency waits for none. */
export async function withFiles(answer: Answer, reader: Reader, drawn: Drawn | undefined, failed: (error: unknown) => void = () => {}): Promise<Answer> {
  if (!drawn || answer.emergency || !answer.blocks.some(isBare)) return answer;
  const blocks = await Promise.all(answer.blocks.map(async (block): Promise<Block> => {
    if (!isBare(block)) return block;
    const file = await drawn(block.picture, reader).catch((error: unknown) => {
      failed(error);
      return null;
    });
    if (file === null) return block;
    return { ...block, picture: { ...block.picture, ...(typeof file === "string" ? { file } : { photo: file }) } };
  }));
  return { ...answer, blocks };
}

/** The answer with its pictures in words alone, for where no file may go. */
export function withoutFiles(answer: Answer): Answer {
  const wordsAlone = (block: Block): Block => {
    if (block.kind !== "picture") return block;
    const { file: _, photo: __, ...words } = block.picture;
    return { ...block, picture: words };
  };
  return { ...answer, blocks: answer.blocks.map(wordsAlone) };
}
