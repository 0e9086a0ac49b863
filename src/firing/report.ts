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
const FLAME = set(`flame flames flaming flamy flicker flickers flickering burning burns flammen flamme flammchen flaemmchen flackert flackern flackernde zungelt zungeln lodert lodern lodernde brennt brennen brennend brennende liekki liekit liekkeja palaa laga
  lagor lagan brinner flammes brule brulent fiamma fiamme brucia bruciano llama llamas arde arden plomien plomienie pali plomyk plamya ogon gorit пламя огонь горит огни языки`);
const BLUE = set("blue bluish blau blaue blauen blauer blaues blauem blaulich blauliche blaulichen sininen siniset sinisia bla blaa blatt bleu bleue bleues blu azzurra azzurre azul azules niebieski niebieskie niebieska sinie синие синий голубые голубой синее");
const GLOW = set(`glow glows glowing glowed ember embers coals orange red reddish hot-spot spark sparks gloeing glut restglut glutnest glutnester glimmt glimmen glimmend glimmende glimmendes gluht glueht gluhen gluehen gluhend gluhende gluhendes rot rote roten rotes roter rotem rotlich rotliche rotliches oranges orangene funken hiillos hiilet hehkuu
  punainen punaista glod gloden glodande glodbadd rod roda braise braises rouge rouges incandescente brace braci rosso rossa rosse brasas brasa ascuas rojo roja rojas rojos zar zarzy zarza
  czerwony czerwone zhar tleet угли жар красные красный тлеет тлеют светится`);
const SAYS_GLOW = set("glow glows glowing glowed orange red reddish spark sparks restglut glutnest glutnester glimmt glimmen glimmend glimmende glimmendes gluht glueht gluhen gluehen gluhend gluhende gluhendes rot rote roten rotes roter rotem rotlich rotliche rotliches oranges orangene funken hehkuu punainen glod glodande rod roda rouge rouges incandescente rosso rossa rosse rojo roja rojas zarzy czerwone жар красные красный тлеет тлеют светится");
/** also the German for the bed as such: it glows unless it is said to be black or raked */
const BED_OR_GLOW = set("glut");
const BLACK = set("black blackened schwarz schwarze schwarzes pechschwarz kohlschwarz kohlrabenschwarz");
const NOT = set(`no not none never without nothing isnt arent wasnt havent hasnt didnt dont doesnt cant cannot couldnt aint zero neither nor kein keine keinen keiner keinem keines keinerlei weder nicht ohne nichts nie niemals nirgends nirgendwo ei eivat inga ingen inte pas
  plus aucune aucun non nessuna nessun niente ningun ninguna nada sin nie brak zadnych нет не без никаких`);
const GONE = set("gone out over died finished stopped ended disappeared vanished weg aus erloschen vorbei verschwunden ausgegangen away");
/** "out of the door", "aus der Tür": where they come out, not that they are out */
const SOMEWHERE = set("of the my from der dem den die das einer einem meinem unserem");
const HEDGE = set(`maybe perhaps probably possibly almost nearly mostly guess think thinking suppose assume hope hopefully seems seem looks look should might fairly kinda sorta about practically basically
  pretty unsure dunno doubt believe except besides bar apart barring vielleicht wahrscheinlich fast wohl glaube glaub meine denke denk anscheinend sieht scheint beinahe nahezu ziemlich meist meistens großteils grossteils
  großtenteils grosstenteils weitgehend halbwegs einigermaßen einigermassen eigentlich vermutlich offenbar hoffentlich hoffe schatze schatz durfte musste konnte sollte bisschen teilweise stellenweise außer ausser usually normally always`);
const LATER = set("wird werde werden muss mussen soll will kann nachher gleich bald erst bevor ehe when once if until till unless after then tomorrow later soon will would wenn sobald falls bis dann spater morgen before should shall");
const HEARSAY = set("mann frau sohn tochter nachbar nachbarin opa oma vater mutter erzahlt behauptet says said told reckons thinks claims meint sagt sagte wife husband son daughter neighbour neighbor grandpa dad mum mom mate");
const YET = set("yet noch");
/** beside it "noch" is nor, not yet */
const NEITHER = set("weder");
const STILL = set("still noch immer");
const RAKED = set(`raked stirred scraped geschurt aufgeschurt gerecht durchgerecht zusammengerecht zusammengezogen geharkt durchgeharkt zusammengeharkt gekratzt aufgekratzt durchgekratzt zusammengekratzt
  zusammengeschoben gestochert durchgestochert durchgeruhrt geruhrt aufgelockert`);
const DARK_ROOM = set("dark darkened darkness dunkel dunkeln dunklen dunklem dunkelheit abgedunkelt abgedunkelten abgedunkeltem verdunkelt verdunkelten");
const A_ROOM = set("in the room im raum zimmer wohnzimmer stube bei with lights looked checked seen geschaut nachgeschaut angeschaut nachgesehen angesehen hingesehen geguckt");
const LIGHTS = set("light lights lamp lamps torch licht lampe lampen lichter");
const OFF = set("off out aus");
const ALARM = set("alarm alarms detector detectors melder co-melder co-warner co-alarm kohlenmonoxidmelder kohlenmonoxid-melder kohlenmonoxidwarner gasmelder warnmelder warner");
const ALARM_FINE = set("works work working worked tested ok okay fine green good installed fitted present beeped funktioniert geht getestet gepruft lauft intakt");
const ALARM_BAD = set("expired chirps chirping chirp dead empty flat old broken missing faulty silent off battery abgelaufen leer kaputt defekt fehlt stumm alt aus los piept piepst piepte schrillt tont ausgelost batterie beeping beeps sounding");
/** of an alarm even when said in the next clauses: "tested, but expired" */
const ALARM_DONE_FOR = set("expired dead broken faulty missing chirps chirping silent abgelaufen kaputt defekt piept piepst stumm");
const GLASS = set("glass pane window scheibe scheiben glas fenster russ ruß rauch tur smoke soot door");
const PLAIN_UNSURE = set("unsure dunno idk unsicher");

interface Token {
  readonly word: string;
  readonly clause: number;
}

/** A German verb is denied before or after it: one of these anywhere in a clause takes back whatever would let something be closed. */
const GERMAN_NOT = set("nicht nie niemals kaum");
/** "No big flames", "keine gelben Flammen mehr" leaves smaller and bluer ones. */
const ONLY_SOME = set(`big large tall high long yellow bright strong grossen grosse großen große hohen hohe hoch langen lange gelben gelbe gelb hellen helle starken starke richtigen richtige
  orangen orange kraftigen kraftige lodernden vielen viele`);
const GERMAN_RELAYS = set("sagt sagte meint meinte glaube glaub denke denk hoffe schatze schatz vermute erzahlt behauptet");
const DEPENDS = set("dass daß ob");
const GERMAN_DENIES = set("nicht kein keine keinen keiner nichts");
/** what may still come after "nicht mehr" without saying that something is left */
const AFTER_NO_MORE = set("mehr da zu sehen sichtbar vorhanden erkennen drin");

/** Lower case, accents off, apostrophes closed up, clauses numbered; one pass. */
export function tokens(text: string): { list: Token[]; questions: ReadonlySet<number> } {
  const plain = text.slice(0, 4000).normalize("NFD").toLowerCase();
  const list: Token[] = [];
  const questions = new Set<number>();
  let clause = 0;
  let word = "";
  const flush = (): void => {
    if (word === "") return;
    if (word === "but" || word === "aber" || word === "doch" || word === "jedoch" || word === "allerdings" || word === "sondern" || word === "though" || word === "however") clause++;
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
  // "nicht abgelaufen" speaks well of an alarm
  for (let i = list.length - 1; i > 0; i--) if (list[i]?.word === "abgelaufen" && list[i - 1]?.word === "nicht") list.splice(i - 1, 2, { word: "gultig", clause: list[i]?.clause ?? 0 });
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
    if (deniedAfter(list, i)) return true;
    for (let j = i + 1; j <= i + 3 && list[j]?.clause === list[i]?.clause; j++) {
      if (GONE.has(list[j]?.word ?? "") && !NOT.has(list[j - 1]?.word ?? "") && !(list[j + 1]?.clause === list[j]?.clause && SOMEWHERE.has(list[j + 1]?.word ?? ""))) return true;
    }
    return false;
  };
  /** "meine Frau sagt, es ist schwarz": a German comma stands between who says it and what is said */
  const relayed = (clause: number): boolean => inClause(clause - 1, GERMAN_RELAYS) || DEPENDS.has(list.find((token) => token.clause === clause)?.word ?? "");
  /** clauses whose statements cannot be taken at their word */
  const loose = (clause: number): boolean =>
    questions.has(clause) || relayed(clause) || inClause(clause, HEDGE) || inClause(clause, LATER) || inClause(clause, HEARSAY) || (inClause(clause, YET) && !inClause(clause, NEITHER));
  /** what would let something be closed, and a German "nicht" stands in its clause */
  const takenBack = (clause: number): boolean => inClause(clause, GERMAN_NOT);
  /** "no big flames": some are left */
  const onlySome = (i: number): boolean => {
    for (let j = i - 1; j >= Math.max(0, i - 3) && list[j]?.clause === list[i]?.clause; j--) if (ONLY_SOME.has(list[j]?.word ?? "")) return true;
    return false;
  };

  let flame: Report["flame"];
  let glow = false;
  let black = false;
  let noFlame = false;
  let noGlow = false;
  let raked: boolean | undefined;
  let dark: boolean | undefined;
  let alarm: Report["alarm"];
  let unsure = list.some((token) => PLAIN_UNSURE.has(token.word)) || pairs(list, "not", "sure") || pairs(list, "dont", "know") || pairs(list, "cant", "tell") || pairs(list, "no", "idea")
    || pairs(list, "nicht", "sicher") || pairs(list, "weiß", "nicht") || pairs(list, "weiss", "nicht") || pairs(list, "nicht", "erkennen") || pairs(list, "nicht", "sagen") || pairs(list, "keine", "ahnung")
    || pairs(list, "gut", "wie");

  list.forEach(({ word, clause }, i) => {
    const isNegated = negated(i);
    const isFlame = FLAME.has(word) || (BLUE.has(word) && !inClause(clause, GLASS) && !(word === "blatt" && LEAF.has(list[i - 1]?.word ?? "")));
    if (isFlame) {
      if (!isNegated) flame = strongest(flame, BLUE.has(word) || inClause(clause, BLUE) ? "blue" : "yellow");
      else if (onlySome(i)) flame = strongest(flame, "blue");
      else if (!loose(clause)) noFlame = true;
    } else if (GLOW.has(word)) {
      if (SAYS_GLOW.has(word) || (BED_OR_GLOW.has(word) && (isNegated || inClause(clause, STILL) || !(inClause(clause, BLACK) || inClause(clause, RAKED))))) {
        if (!isNegated) glow = true;
        else if (!loose(clause)) noGlow = true;
      } else if (!isNegated && !inClause(clause, BLACK) && !inClause(clause, RAKED)) glow = glow || inClause(clause, STILL);
    } else if (BLACK.has(word) && !inClause(clause, GLASS)) {
      if (isNegated || takenBack(clause)) glow = true;
      else if (loose(clause)) unsure = true;
      else black = true;
    } else if (RAKED.has(word)) {
      raked = isNegated || takenBack(clause) || loose(clause) ? false : (raked ?? true);
    } else if (DARK_ROOM.has(word) && !(list[i + 1] && SAYS_GLOW.has(list[i + 1]?.word ?? ""))) {
      const aRoom = inClause(clause, A_ROOM) || word.startsWith("darkened");
      // "no glow in the dark": the no belongs to the glow
      const ownNegation = isNegated && !list.slice(Math.max(0, i - WINDOW), i).some((token) => token.clause === clause && (GLOW.has(token.word) || FLAME.has(token.word) || token.word === "light"));
      const denied = ownNegation || (takenBack(clause) && !inClause(clause, GLOW) && !inClause(clause, BLACK) && !inClause(clause, FLAME));
      if (aRoom) dark = denied || loose(clause) ? false : (dark ?? true);
    } else if (OFF.has(word) && (LIGHTS.has(list[i - 1]?.word ?? "") || LIGHTS.has(list[i + 1]?.word ?? "") || LIGHTS.has(list[i - 2]?.word ?? ""))) {
      dark = loose(clause) ? false : (dark ?? true);
    } else if (ALARM.has(word)) {
      const good = list.some((token, j) => token.clause === clause && ALARM_FINE.has(token.word) && !negated(j));
      const bad = inClause(clause, ALARM_BAD) || [clause + 1, clause + 2].some((next) => inClause(next, ALARM_DONE_FOR) && !inClause(next, ALARM)) || takenBack(clause) || isNegated || list.some((token, j) => token.clause === clause && ALARM_FINE.has(token.word) && negated(j));
      if (bad) alarm = "doubt";
      else if (good && !loose(clause)) alarm = alarm ?? "works";
    }
  });

  // no glow to be seen in a dark room is what black means
  if (noGlow && dark === true && !glow && !flame && !unsure) black = true;
  if (black && glow) unsure = true;
  if (black && flame) unsure = true;
  const roar = list.some(({ word }, i) => (word.startsWith("roar") || word === "thundering" || (GERMAN_ROARS.has(word) && !takenBack(list[i]?.clause ?? 0))) && !negated(i));
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

/** "Flammen sehe ich keine mehr", "es brennt nicht mehr", "da glimmt nichts": denied behind, and nothing said to be left. */
function deniedAfter(list: readonly Token[], i: number): boolean {
  const clause = list[i]?.clause;
  let at = i + 1;
  while (at <= i + 5 && list[at]?.clause === clause && !GERMAN_DENIES.has(list[at]?.word ?? "")) {
    if (STILL.has(list[at]?.word ?? "")) return false;
    at++;
  }
  const denial = list[at];
  if (denial?.clause !== clause || !denial || !GERMAN_DENIES.has(denial.word) || at > i + 5) return false;
  const rest = list.slice(at + 1).filter((token) => token.clause === clause).map(({ word }) => word);
  return rest.every((word) => AFTER_NO_MORE.has(word)) && (denial.word !== "nicht" || rest[0] === "mehr" || rest[0] === "zu" || rest[0] === "da");
}

/** before "Blatt" these make it the builder's sheet, not Swedish blue */
const LEAF = set("laut das dem des ein im vom am auf mein meinem kein dein ofenbauer nach");
const GERMAN_ROARS = set("tost tosen tosend drohnt drohnen brullt bruellt droehnt donnert");

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
