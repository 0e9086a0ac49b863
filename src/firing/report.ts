/**
 * Reads what a person reports about fire and bed. One-sided on purpose: a word of danger counts in nine languages, hedged or not;
 * a word that would let something be closed counts only when it is plain, present, unhedged and not contradicted.
 */

export interface Report {
  readonly flame?: "high" | "yellow" | "blue" | "none";
  /** minutes without any flame, when the person says so */
  readonly flame_free_min?: number;
  readonly bed?: "glow" | "black";
  readonly raked?: boolean;
  /** looked at with the room dark */
  readonly in_the_dark?: boolean;
  readonly alarm?: "works" | "doubt";
  /** hedged, hearsay, a question, or at odds with itself */
  readonly unsure?: boolean;
  readonly engaged?: boolean;
  readonly smoke?: "room" | "firebox";
  readonly out?: boolean;
  readonly roar?: boolean;
}

const set = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/));

// English, German, Finnish, Swedish, French, Italian, Spanish, Polish, Russian, without accents
const FLAME = set(`flame flames flaming flamy flicker flickers flickering burning burns flammen flamme lodert brennt brennen liekki liekit liekkeja palaa laga
  lagor lagan brinner flammes brule brulent fiamma fiamme brucia bruciano llama llamas arde arden plomien plomienie pali plomyk plamya ogon gorit пламя огонь горит огни языки`);
const BLUE = set("blue bluish blau blaue blauen blauer sininen siniset sinisia bla blaa blatt bleu bleue bleues blu azzurra azzurre azul azules niebieski niebieskie niebieska sinie синие синий голубые голубой синее");
const GLOW = set(`glow glows glowing glowed ember embers coals orange red reddish hot-spot spark sparks gloeing glut glimmt glimmen gluht gluehen rot rote roten hiillos hiilet hehkuu
  punainen punaista glod gloden glodande glodbadd rod roda braise braises rouge rouges incandescente brace braci rosso rossa rosse brasas brasa ascuas rojo roja rojas rojos zar zarzy zarza
  czerwony czerwone zhar tleet угли жар красные красный тлеет тлеют светится`);
const SAYS_GLOW = set("glow glows glowing glowed orange red reddish spark sparks glut glimmt glimmen gluht rot rote hehkuu punainen glod glodande rod roda rouge rouges incandescente rosso rossa rosse rojo roja rojas zarzy czerwone жар красные красный тлеет тлеют светится");
const BLACK = set("black blackened schwarz");
const NOT = set(`no not none never without nothing isnt arent wasnt havent hasnt didnt dont doesnt cant cannot couldnt aint zero neither nor kein keine keinen keiner nicht ohne nichts nie ei eivat inga ingen inte pas
  plus aucune aucun non nessuna nessun niente ningun ninguna nada sin nie brak zadnych нет не без никаких`);
const GONE = set("gone out over died finished stopped ended disappeared vanished weg aus erloschen vorbei away");
const HEDGE = set(`maybe perhaps probably possibly almost nearly mostly guess think thinking suppose assume hope hopefully seems seem looks look should might fairly kinda sorta about practically basically
  pretty unsure dunno doubt believe except besides bar apart barring vielleicht wahrscheinlich fast wohl glaube meine denke anscheinend sieht scheint usually normally always`);
const LATER = set("when once if until till unless after then tomorrow later soon will would wenn sobald falls bis dann spater morgen before should shall");
const HEARSAY = set("says said told reckons thinks claims meint sagt sagte wife husband son daughter neighbour neighbor grandpa dad mum mom mate");
const YET = set("yet noch");
const STILL = set("still noch immer");
const RAKED = set("raked stirred scraped geschurt gerecht zusammengezogen");
const DARK_ROOM = set("dark darkened darkness dunkel dunkeln dunkelheit abgedunkelt");
const LIGHTS = set("light lights lamp lamps torch licht lampe");
const OFF = set("off out aus");
const ALARM = set("alarm alarms detector detectors melder co-melder warner");
const ALARM_FINE = set("works work working worked tested ok okay fine green good installed fitted present beeped funktioniert geht getestet gepruft lauft");
const ALARM_BAD = set("expired chirps chirping chirp dead empty flat old broken missing faulty silent off battery abgelaufen leer kaputt piept beeping beeps sounding");
const GLASS = set("glass pane window scheibe glas smoke soot door");
const PLAIN_UNSURE = set("unsure dunno idk");

interface Token {
  readonly word: string;
  readonly clause: number;
}

/** Lower case, accents off, apostrophes closed up, clauses numbered; one pass. */
export function tokens(text: string): { list: Token[]; questions: ReadonlySet<number> } {
  const plain = text.slice(0, 4000).normalize("NFD").toLowerCase();
  const list: Token[] = [];
  const questions = new Set<number>();
  let clause = 0;
  let word = "";
  const flush = (): void => {
    if (word === "") return;
    if (word === "but" || word === "aber" || word === "though" || word === "however") clause++;
    list.push({ word, clause });
    word = "";
  };
  for (const char of plain) {
    if (/\p{L}|\p{N}|-/u.test(char)) word += char;
    else if (/\p{M}|['’`\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/u.test(char)) continue;
    else {
      flush();
      if (char === "?" || char === "？") questions.add(clause);
      if (/[.,;:!?？…\n()]/.test(char)) clause++;
    }
  }
  flush();
  return { list, questions };
}

const WINDOW = 5;

export function readReport(text: string): Report {
  const { list, questions } = tokens(text);
  const inClause = (clause: number, words: ReadonlySet<string>): boolean => list.some((token) => token.clause === clause && words.has(token.word));
  const negated = (i: number): boolean => {
    for (let j = i - 1; j >= Math.max(0, i - WINDOW) && list[j]?.clause === list[i]?.clause; j--) {
      const before = list[j]?.word ?? "";
      if (STILL.has(before) && before !== "noch") return false;
      if (NOT.has(before)) return true;
    }
    for (let j = i + 1; j <= i + 3 && list[j]?.clause === list[i]?.clause; j++) {
      if (GONE.has(list[j]?.word ?? "") && !NOT.has(list[j - 1]?.word ?? "")) return true;
    }
    return false;
  };
  /** clauses whose statements cannot be taken at their word */
  const loose = (clause: number): boolean =>
    questions.has(clause) || inClause(clause, HEDGE) || inClause(clause, LATER) || inClause(clause, HEARSAY) || inClause(clause, YET);

  let flame: Report["flame"];
  let glow = false;
  let black = false;
  let noFlame = false;
  let noGlow = false;
  let raked: boolean | undefined;
  let dark: boolean | undefined;
  let alarm: Report["alarm"];
  let unsure = list.some((token) => PLAIN_UNSURE.has(token.word)) || pairs(list, "not", "sure") || pairs(list, "dont", "know") || pairs(list, "cant", "tell") || pairs(list, "no", "idea");

  list.forEach(({ word, clause }, i) => {
    const isNegated = negated(i);
    const isFlame = FLAME.has(word) || (BLUE.has(word) && !inClause(clause, GLASS));
    if (isFlame) {
      if (!isNegated) flame = strongest(flame, BLUE.has(word) || inClause(clause, BLUE) ? "blue" : "yellow");
      else if (!loose(clause)) noFlame = true;
    } else if (GLOW.has(word)) {
      if (SAYS_GLOW.has(word)) {
        if (!isNegated) glow = true;
        else if (!loose(clause)) noGlow = true;
      } else if (!isNegated && !inClause(clause, BLACK) && !inClause(clause, RAKED)) glow = glow || inClause(clause, STILL);
    } else if (BLACK.has(word) && !inClause(clause, GLASS)) {
      if (isNegated) glow = true;
      else if (loose(clause)) unsure = true;
      else black = true;
    } else if (RAKED.has(word)) {
      raked = isNegated || loose(clause) ? false : (raked ?? true);
    } else if (DARK_ROOM.has(word) && !(list[i + 1] && SAYS_GLOW.has(list[i + 1]?.word ?? ""))) {
      const aRoom = inClause(clause, set("in the room im raum zimmer with lights looked checked seen")) || word.startsWith("darkened");
      // "no glow in the dark": the no belongs to the glow
      const ownNegation = isNegated && !list.slice(Math.max(0, i - WINDOW), i).some((token) => token.clause === clause && (GLOW.has(token.word) || FLAME.has(token.word) || token.word === "light"));
      if (aRoom) dark = ownNegation || loose(clause) ? false : (dark ?? true);
    } else if (OFF.has(word) && (LIGHTS.has(list[i - 1]?.word ?? "") || LIGHTS.has(list[i + 1]?.word ?? "") || LIGHTS.has(list[i - 2]?.word ?? ""))) {
      dark = loose(clause) ? false : (dark ?? true);
    } else if (ALARM.has(word)) {
      const good = list.some((token, j) => token.clause === clause && ALARM_FINE.has(token.word) && !negated(j));
      const bad = inClause(clause, ALARM_BAD) || isNegated || list.some((token, j) => token.clause === clause && ALARM_FINE.has(token.word) && negated(j));
      if (bad) alarm = "doubt";
      else if (good && !loose(clause)) alarm = alarm ?? "works";
    }
  });

  // no glow to be seen in a dark room is what black means
  if (noGlow && dark === true && !glow && !flame && !unsure) black = true;
  if (black && glow) unsure = true;
  if (black && flame) unsure = true;
  const roar = list.some(({ word }, i) => (word.startsWith("roar") || word === "thundering") && !negated(i));
  const minutes = flameFreeMinutes(list);
  const said: Report = {
    ...(flame ? { flame } : noFlame || black ? { flame: "none" as const } : {}),
    ...(minutes !== undefined && !flame && noFlame ? { flame_free_min: minutes } : {}),
    ...(glow ? { bed: "glow" as const } : black && !unsure && !flame ? { bed: "black" as const } : {}),
    ...(raked === undefined ? {} : { raked }),
    ...(dark === undefined ? {} : { in_the_dark: dark }),
    ...(alarm ? { alarm } : {}),
    ...(unsure ? { unsure: true } : {}),
    ...(roar ? { roar: true } : {}),
  };
  return said;
}

function pairs(list: readonly Token[], first: string, second: string): boolean {
  return list.some((token, i) => token.word === first && list[i + 1]?.word === second);
}

const RANK = { none: 0, blue: 1, yellow: 2, high: 3 } as const;
const strongest = (a: Report["flame"], b: NonNullable<Report["flame"]>): NonNullable<Report["flame"]> => (a && RANK[a] >= RANK[b] ? a : b);

function flameFreeMinutes(list: readonly Token[]): number | undefined {
  for (let i = 1; i < list.length; i++) {
    const word = list[i]?.word ?? "";
    const before = Number(list[i - 1]?.word);
    if (!Number.isFinite(before)) continue;
    if (word.startsWith("min")) return before;
    if (word === "h" || word.startsWith("hour") || word.startsWith("stunde")) return before * 60;
  }
  return undefined;
}

/** Nothing about fire or bed was said at all. */
export const saysNothing = (report: Report): boolean => Object.keys(report).length === 0;
