/**
 * Photographs of the album on their way out. A network gets the bytes and nothing is written down; at a terminal they lie in a folder of
 * their own, and what is deleted from the album, or belongs to somebody who is forgotten, goes from there too.
 */
import { createHash, randomUUID } from "node:crypto";
import { mkdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import type { Photo, Picture } from "../answer.ts";
import type { RemoteCore } from "../core/remote.ts";
import type { Reader } from "../text/render.ts";
import { PHOTO } from "./photo-data.ts";

const Wanted = z.strictObject({ picture_id: z.string(), person_id: z.string(), name: z.string().regex(/^[a-z0-9][a-z0-9-]{0,60}\.(?:jpg|png|webp)$/) });
type Wanted = z.infer<typeof Wanted>;

type Fetch = (picture_id: string, person_id: string) => Promise<Omit<Photo, "name"> | null>;
type Draw = (picture: Picture, reader: Reader) => Promise<string>;

const FETCH_MS = 10_000;
export const photosFrom = (remote: () => Pick<RemoteCore, "photo">): Fetch => (picture_id, person_id) => remote().photo(picture_id, person_id, FETCH_MS);

async function fetched(picture: Picture, fetch: Fetch): Promise<{ readonly wanted: Wanted; readonly photo: Photo } | null> {
  const wanted = Wanted.parse(picture.data);
  const came = await fetch(wanted.picture_id, wanted.person_id);
  return came && { wanted, photo: { ...came, name: wanted.name } };
}

/** Drawn pictures as files, photographs in memory. */
export const withPhotos = (draw: Draw, fetch: Fetch) => async (picture: Picture, reader: Reader): Promise<string | Photo | null> =>
  picture.chart === PHOTO ? ((await fetched(picture, fetch))?.photo ?? null) : draw(picture, reader);

/** Where it lies already, else its name; with a number where another picture of the same second has taken it. */
function placeFor(index: Readonly<Record<string, Wanted>>, { picture_id, name }: Wanted, own: string): string {
  const free = (place: string): boolean => index[place] === undefined || index[place].picture_id === picture_id;
  const [stem = "", ending = ""] = name.split(".");
  const places = [name, ...Array.from({ length: 60 }, (_, at) => `${stem}-${at + 2}.${ending}`)].map((one) => join(own, one));
  return places.find(free) ?? join(own, name);
}

const Index = z.record(z.string(), Wanted);

export interface KeptPhotos {
  /** drawn pictures and photographs, both as files */
  draw(picture: Picture, reader: Reader): Promise<string | null>;
  /** Deletes every file whose picture is no longer in the album of the person it was kept for. */
  sweep(): Promise<void>;
}

/** @param folder for nothing else */
export function keptPhotos({ folder, draw, fetch }: { readonly folder: string; readonly draw: Draw; readonly fetch: Fetch }): KeptPhotos {
  const index = join(folder, "index.json");
  /** one after the other: what is swept is not being written */
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work);
    last = next.catch(() => {});
    return next;
  };

  const readIndex = async (): Promise<Record<string, Wanted>> => {
    try {
      return Index.parse(JSON.parse(await readFile(index, "utf8")));
    } catch {
      return {};
    }
  };
  async function put(file: string, content: string | Uint8Array): Promise<void> {
    const half = join(folder, `.${randomUUID()}`);
    await writeFile(half, content, { mode: 0o600 });
    await rename(half, file);
  }

  async function keep({ wanted, photo }: { readonly wanted: Wanted; readonly photo: Photo }): Promise<string> {
    // people share a folder, and two may have photographed on one day
    const own = createHash("sha256").update(wanted.person_id).digest("hex").slice(0, 8);
    await mkdir(join(folder, own), { recursive: true, mode: 0o700 });
    const before = await readIndex();
    const place = placeFor(before, wanted, own);
    await put(index, JSON.stringify({ ...before, [place]: wanted }));
    await put(join(folder, place), photo.bytes);
    return join(folder, place);
  }

  return {
    async draw(picture, reader) {
      if (picture.chart !== PHOTO) return draw(picture, reader);
      return inTurn(async () => {
        const found = await fetched(picture, fetch);
        return found && keep(found);
      });
    },
    sweep: () =>
      inTurn(async () => {
        const before = await readIndex();
        const gone: string[] = [];
        for (const [name, { picture_id, person_id }] of Object.entries(before)) if (!(await fetch(picture_id, person_id))) gone.push(name);
        if (gone.length === 0) return;
        await Promise.all(gone.map((name) => rm(join(folder, name), { force: true })));
        await put(index, JSON.stringify(Object.fromEntries(Object.entries(before).filter(([name]) => !gone.includes(name)))));
      }),
  };
}

/** Receiving, with the files looked after whenever somebody dealt with what is kept of them. */
export const sweeping =
  (receive: RemoteCore["receive"], { sweep }: Pick<KeptPhotos, "sweep">): RemoteCore["receive"] =>
  async (message, limit_ms) => {
    const received = await receive(message, limit_ms);
    if (received.answer.topic === "my-data") await sweep().catch(() => {});
    return received;
  };
