/** Pictures from another thread: kept warm between pictures, given up when one takes too long, never keeping the process alive. */
import { Worker } from "node:worker_threads";
import type { Picture } from "../answer.ts";
import { calls, type Call } from "../core/calls.ts";
import type { Reader } from "../text/render.ts";

/** The first picture waits for the libraries to load; the others take some hundredths of a second. */
const LIMIT_MS = 6_000;

export class NotDrawn extends Error {}

let thread: { readonly worker: Worker; readonly call: Call; readonly ended: Promise<never> } | null = null;

function started(): NonNullable<typeof thread> {
  if (thread) return thread;
  const worker = new Worker(new URL(import.meta.url.endsWith(".ts") ? "./worker.ts" : "./worker.js", import.meta.url));
  worker.unref();
  const ended = new Promise<never>((_, reject) => {
    worker.once("error", (error) => reject(new NotDrawn(`the drawing thread ended: ${String(error)}`)));
    worker.once("exit", () => reject(new NotDrawn("the drawing thread ended")));
  });
  ended.catch(() => {
    if (thread?.worker === worker) thread = null;
  });
  thread = { worker, call: calls(worker, {}), ended };
  return thread;
}

/**
 * Draw a picture for a reader: 800 pixels wide, legible at 400.
 * @returns the bytes of a PNG
 * @throws NotDrawn when it took longer than `limit_ms` or cannot be drawn; the words of the picture stand all the same
 */
export async function draw(picture: Pick<Picture, "chart" | "data">, reader: Reader, limit_ms: number = LIMIT_MS): Promise<Uint8Array> {
  const { worker, call, ended } = started();
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      if (thread?.worker === worker) thread = null;
      void worker.terminate();
      reject(new NotDrawn(`no picture within ${limit_ms / 1000} s`));
    }, limit_ms);
  });
  try {
    const { chart, data } = picture;
    return (await Promise.race([call("draw", { chart, data }, reader), ended, limit])) as Uint8Array;
  } catch (error) {
    throw error instanceof NotDrawn ? error : new NotDrawn(error instanceof Error ? error.message : String(error));
  } finally {
    clearTimeout(timer);
  }
}

/** End the thread; the next picture starts another. */
export async function stopDrawing(): Promise<void> {
  const open = thread;
  thread = null;
  await open?.worker.terminate();
}
