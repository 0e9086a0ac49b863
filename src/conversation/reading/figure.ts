/** A figure as read from a person's words. */
import type { Dimension, UnitId } from "../../quantities.ts";
import type { Span } from "./tokens.ts";

export interface Figure {
  /** null for a number without a unit */
  readonly dimension: Dimension | null;
  readonly value: number;
  /** as written; null for bare numbers and money */
  readonly unit: UnitId | null;
  /** a range in the same unit, when one was given or the words imply one */
  readonly low?: number;
  readonly high?: number;
  readonly about?: boolean;
  /** "at most", "up to": an upper bound; "at least", "over": a lower one */
  readonly bound?: "max" | "min";
  /** moisture and shares: wet or dry basis when said, null when not */
  readonly basis?: "wet" | "dry" | null;
  /** wood volumes: how the cubic metre or cord is filled, when said */
  readonly filling?: "stacked" | "loose" | "solid";
  /** the measure has no fixed size: "face cord", "ton"; `low` and `high` hold what it may be */
  readonly uncertain?: string;
  /** degrees of a scale nobody named; `unit` is the reader's usual one */
  readonly unscaled?: boolean;
  /** currency as written */
  readonly money?: string;
  /** other reading of "1.800" */
  readonly alt?: number;
  /** digits after the decimal mark as written */
  readonly decimals: number;
  readonly at: Span;
}

export interface FigureOptions {
  /** what "degrees" means when no scale is named; Celsius when absent */
  readonly degrees?: "C" | "F";
}

export interface PlacedFigure {
  readonly figure: Figure;
  /** tokens it was read from: first and one past the last */
  readonly from: number;
  readonly to: number;
  /** how many of the figure's unit one of the unit named is: 7 days for a week; 1 when absent */
  readonly times?: number;
}
