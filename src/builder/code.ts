/** The code an owner hands to the builder. It opens nothing by itself: the owner is asked once more who came with it. */
import { createHash } from "node:crypto";

/** without letters and figures that look alike */
const LETTERS = "ABCDEFGHJKMNPQRSTVWXYZ23456789";
const LENGTH = 8;

/** The same cause makes the same code. */
export function builderCode(cause: string): string {
  const bytes = createHash("sha256").update(`builder ${cause}`).digest();
  const letters = [...bytes.subarray(0, LENGTH)].map((byte) => LETTERS[byte % LETTERS.length]).join("");
  return `${letters.slice(0, 4)}-${letters.slice(4)}`;
}

const CODE = /\b(?:builder'?s? code|ofenbauer-?\s?code|code (?:als|vom) ofenbauer)[\s:]+([A-Z0-9]{4})[- ]?([A-Z0-9]{4})\b/i;

export function builderCodeIn(text: string | undefined): string | null {
  const found = CODE.exec((text ?? "").slice(0, 200));
  return found ? `${found[1]}-${found[2]}`.toUpperCase() : null;
}
