/** What the adapter is started with. */
import type { Text } from "../../src/answer.ts";
import type { Log } from "../../src/delivery/log.ts";
import type { Secret } from "../../src/settings.ts";
import type { Reader, Renderer } from "../../src/text/render.ts";
import type { Drawn } from "../drawn.ts";

export interface MatrixOptions {
  readonly homeserver: string;
  /** `@name:server`, or the local name alone */
  readonly user?: string;
  readonly token?: Secret;
  readonly password?: Secret;
  /** file of identity, keys and what has come in */
  readonly database: string;
  /** file of the key with which old rooms are read again after a loss; belongs on another disk than the database, or in a safe */
  readonly recovery_key_file: string;
  /** who may bring us into a room: `*`, server names, people (`@name:server`), rooms (`!id`); none: people of our own homeserver */
  readonly invites?: readonly string[];
  /** whether groups without encryption are answered; private talks without it never are */
  readonly unencrypted?: "refuse" | "groups";
  readonly render: Renderer;
  /** how our own words are shown to people of whom nothing is known */
  readonly reader: Reader;
  readonly log: Log;
  readonly now: () => number;
  readonly draw?: Drawn;
  readonly greeting?: Text;
  /** the store can no longer be written: memory is ahead of the disk, and the process must end at once (exit code 70) */
  readonly onBroken: (error: unknown) => void;
  /** the session was ended from outside: nothing will come in any more */
  readonly onFatal?: () => void;
  /** most messages taken from one person in one room */
  readonly budget?: { readonly most: number; readonly in_ms: number };
}

/** The homeserver, the account or the recovery key do not fit together; the sentence says what would be right. */
export class CannotStart extends Error {}
