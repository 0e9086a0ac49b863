/** A network as delivery sees it; every adapter fits. */
import type { Outgoing } from "../records/ports.ts";
import type { UnitSystem } from "../quantities.ts";

export interface Reader {
  readonly locale: string;
  readonly system: UnitSystem;
  readonly timezone: string;
}

export type Sent =
  | { readonly sent: true; readonly native_id: string | null }
  | { readonly sent: false; readonly retry: true; readonly after_ms?: number; readonly why: string }
  | { readonly sent: false; readonly retry: false; readonly why: string };

export interface Outlet {
  readonly network: string;
  send(outgoing: Outgoing, reader: Reader): Promise<Sent>;
  lookUp?(outgoing: Outgoing): Promise<Sent | null>;
}

/** How long a network drops a second message under the same key. One that drops none has a window of 0. */
export type Windows = Readonly<Record<string, number>>;
