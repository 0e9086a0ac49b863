/** Pictures on their way out: asked for as late as can be; where drawing fails, the picture's words stand. */
import type { Answer, Block, Picture } from "../src/answer.ts";
import type { Reader } from "../src/text/render.ts";

/** Gives the file of a picture, drawn for this reader; rejects when it cannot be drawn. */
export type Drawn = (picture: Picture, reader: Reader) => Promise<string>;

/** The answer with the file of each picture that could be drawn. */
export async function withFiles(answer: Answer, reader: Reader, drawn: Drawn | undefined): Promise<Answer> {
  if (!drawn || !answer.blocks.some((block) => block.kind === "picture")) return answer;
  const blocks = await Promise.all(answer.blocks.map(async (block): Promise<Block> => {
    if (block.kind !== "picture") return block;
    const file = await drawn(block.picture, reader).catch(() => undefined);
    return file === undefined ? block : { ...block, picture: { ...block.picture, file } };
  }));
  return { ...answer, blocks };
}
