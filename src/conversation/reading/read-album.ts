/** What somebody wants of the pictures kept: see them, one of them, two side by side, one gone. */
import { shows, spotIn, type What, widthIn } from "./read-picture.ts";

export type Which = number | "newest" | "oldest";
export type AlbumRequest =
  | { readonly wants: "list"; readonly what?: What }
  | { readonly wants: "one"; readonly which: Which; readonly what?: What }
  | { readonly wants: "compare"; readonly what?: What; readonly spot?: string }
  | { readonly wants: "delete"; readonly which: Which }
  | { readonly wants: "delete-all" }
  | { readonly wants: "width"; readonly which: Which; readonly width_mm: number };

const ONE = "(?:picture|photo|photograph|image|bild|foto)";
const MANY = "(?:album|pictures|photos|photographs|images|bilder|fotos)";
const SEE = /^(?:(?:please|can (?:i|you|we)|could (?:i|you|we)|may i|let me|i want to|i would like to|i'd like to|would you) )*(?:(?:show|list|see|view|open|look at|send me|give me)\b|(?:my |our |the )?(?:crack |glass |soot )?(?:album|pictures|photos)$)/;
const NUMBERED = new RegExp(`\\b${ONE} (?:number |no\\.? ?|nr\\.? ?|# ?)?(\\d{1,3})\\b`);
const LAST = new RegExp(`\\b(?:last|latest|newest|most recent|letzte\\w*|neueste\\w*) (?:crack |glass |soot )?${ONE}\\b`);
const FIRST = new RegExp(`\\b(?:first|oldest|erste\\w*|älteste\\w*) (?:crack |glass |soot )?${ONE}\\b`);
const AWAY = /\b(?:delete|remove|erase|throw away|get rid of|bin)\b/;
const ASKS_HOW = /^(?:how|what|why|when|where|should|do i|does|is|are)\b/;

/** @param plain in English words, small letters, without its last point */
export function readAlbumRequest(plain: string): AlbumRequest | null {
  if (plain.length > 120 || ASKS_HOW.test(plain)) return null;
  const what = shows(plain);
  const about = what ? { what } : {};
  const number = NUMBERED.exec(plain)?.[1];
  const which: Which | null = number !== undefined ? Number(number) : LAST.test(plain) ? "newest" : FIRST.test(plain) ? "oldest" : null;
  const many = new RegExp(`\\b${MANY}\\b`).test(plain);
  if (AWAY.test(plain)) return which !== null ? { wants: "delete", which } : many && /\b(?:all|every|my|the)\b/.test(plain) ? { wants: "delete-all" } : null;
  if (/\bcompare\b/.test(plain)) {
    if (!many && !/\b(?:crack|glass|pane|soot)/.test(plain)) return null;
    const spot = spotIn(plain);
    return { wants: "compare", ...about, ...(spot ? { spot } : {}) };
  }
  const width_mm = which === null ? undefined : widthIn(plain.replace(NUMBERED, ""));
  if (which !== null && width_mm !== undefined) return { wants: "width", which, width_mm };
  if (which !== null && (SEE.test(plain) || new RegExp(`^(?:the )?${ONE} (?:number |no\\.? ?|# ?)?\\d{1,3}$`).test(plain))) return { wants: "one", which, ...about };
  return many && SEE.test(plain) ? { wants: "list", ...about } : null;
}
