/**
 * What people say alike to many questions, whatever the tree: since when, at what time of a fire, how far open, how warm, as before. A
 * wording here speaks for the answer that means it, where the question is about that.
 */
import type { Sign } from "../../knowledge/schemas.ts";

interface Meaning {
  /** what the question has to be about */
  readonly asks: RegExp;
  /** which of its answers mean this, by "id: label" */
  readonly answers: RegExp;
  readonly said: RegExp;
  /** how much it speaks for them; from 0.85 on it decides alone */
  readonly weight: number;
}

const SINCE = /\b(?:since when|how long has it been like|is it new)\b/i;
const IN_THE_FIRE = /\bwhen (?:does it|is it|in the lighting)\b/i;
const SETTING = /\b(?:air|dampers?|bypass|slide|throat)\b/i;
const HEAT = /\b(?:heater's face|how does the heater feel)\b/i;
const PLACE = /\b(?:where|which|what stays|what is left|how is the fire laid)\b/i;
const CHANGE = /\b(?:different|changed?|new|worse|lately|afterwards|happen\w*)\b/i;

const MONTH = "(?:jan(?:uary)?|feb(?:ruary)?|march|april|may|june|july|aug(?:ust)?|sept(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?|spring|summer|autumn|fall|winter|christmas|easter)";
const DAY = "(?:yesterday|today|this morning|last night|tonight|(?:mon|tues|wednes|thurs|fri|satur|sun)day)";

const MEANINGS: readonly Meaning[] = [
  {
    asks: SINCE, answers: /^(?:sudden|new)\b/, weight: 0.95,
    said: new RegExp(`\\b(?:all at once|all of a sudden|sudden(?:ly)?|out of (?:the blue|nowhere)|overnight|from one (?:day|fire|evening) to the (?:next|other)|(?:the |my |our )?(?:very )?first time(?: ever)?|(?:it )?never (?:did|does|was|had|happened|used to)?(?: (?:it|this|that|so))* ?before|(?:used to be|was|were) (?:fine|ok(?:ay)?|good|perfect|alright) (?:yesterday|(?:the )?last|until|till|up to|before)|since (?:\\w+ )?${DAY}|(?:just|only) (?:started|began|today))\\b`),
  },
  // "used to be 60, now 85"
  { asks: SINCE, answers: /^new\b/, weight: 0.9, said: /\b(?:used to (?:be|stay|read)|before (?:it )?(?:was|only)|(?:hotter|warmer|more|worse) (?:now|than)|did not use to|never (?:that|this|so) (?:hot|warm)|(?:\w+ ){0,3}now \d)/ },
  {
    asks: SINCE, answers: /^(?:weeks|slowly)\b/, weight: 0.95,
    said: /\b(?:little by little|bit by bit|creep(?:s|ing)|crept|gradual(?:ly)?|slow(?:ly)? (?:getting|got|gets|worse|more|less)|(?:get(?:s|ting)|got|grow(?:s|ing)|become|becoming) (?:a (?:bit|little) )?(?:worse|weaker|slower|more|less)(?: and| every| each| by| with| over|$)|(?:worse|more|weaker|less) (?:and (?:worse|more|weaker|less)|each|every|by the|week by week|year by year)|slowly|over (?:the |some |several |many |two |three |a few |the last )*(?:weeks|months|winters?|season|years))\b/,
  },
  { asks: SINCE, answers: /^(?:weeks|slowly)\b/, weight: 0.5, said: new RegExp(`\\b(?:since|from|began in|started in)(?: about| around| maybe| roughly| early| late| mid| the| this| last)* ${MONTH}\\b|\\bfor (?:some |a few |two |three |several |many )*(?:weeks|months)\\b`) },
  {
    asks: SINCE, answers: /^always\b/, weight: 0.95,
    said: /\b(?:always(?! (?:fine|good|ok))|(?:like|as)(?: in)? (?:every|each|other|all|previous) (?:winter|year|time|season|fire)s?\b|from the (?:very )?(?:start|beginning|outset|first day)|(?:ever )?since (?:the beginning|day one|always|new|it was (?:built|new|put in)|(?:we|i) (?:have|had|got|moved|live|bought|built)(?! (?:new|a |the new))[^,.]*)|as long as (?:we|i)|never (?:any )?(?:different|otherwise|better)|day one)\b/,
  },
  {
    asks: SINCE, answers: /^(?:now-and-then|some-days|sometimes|once|days)\b/, weight: 0.9,
    said: /\b(?:now and (?:then|again)|some ?times|(?:on )?some (?:days|fires|evenings|mornings)|once in a while|on and off|not (?:always|every time|each time|every day)|occasional(?:ly)?|(?:only|just) (?:that|this|the) (?:one|once|time|evening|day|night)|(?:only|just) (?:the )?once|usually (?:not|fine|ok(?:ay)?|good)|comes and goes|off and on|(?:only|every|just)(?: in| on| when it'?s?)? (?:spring|summer|autumn|fall|storms?|winds?|windy|mild|warm|cold|damp|foggy)(?: days| weather| and \w+)?)\b/,
  },
  {
    asks: SINCE, answers: /^work\b/, weight: 0.95,
    said: /\b(?:since|after|when|from when) (?:the |a |our |my |it |we |he |they |was |were |had |got )*(?:sweep(?:ing)?|chimney (?:man|sweep)|mason|builder|fitter|plumber|roofers?|repairs?|service|swept|cleaned|cleaning|repaired|fixed|mended|worked on)\b/,
  },
  { asks: SINCE, answers: /^(?:new-)?wood\b/, weight: 1.1, said: /\b(?:new|fresh|other|another|different|changed(?: the| our)?) (?:batch|lot|load|pile|stack|delivery|logs?|wood|supplier|firewood)\b/ },
  { asks: SINCE, answers: /^rest\b/, weight: 1, said: /\b(?:(?:nothing|not (?:lit|used|fired|heated)|no fires?|unused|stood (?:cold|still|unused)|idle)(?: \w+){0,2} (?:since|all|over|through|for)|first fire (?:of|this|in|after|since|tomorrow)|after the (?:summer|holiday|break))\b/ },

  { asks: IN_THE_FIRE, answers: /\b(?:first half hour|first quarter|at once, from the first)/i, weight: 0.9, said: /\b(?:(?:at|in|from|only) the (?:very )?(?:start|beginning|outset)|right (?:away|from|at the)|straight ?away|immediately|in the first (?:few |five |ten |15 |quarter|minutes|half)\w*|first (?:few |five |ten |fifteen |twenty )?minutes|as soon as (?:i|we|the)|at once|instantly)\b/ },
  { asks: IN_THE_FIRE, answers: /\b(?:nearly the whole fire|all through)/i, weight: 1, said: /\b(?:the (?:whole|entire|full) (?:time|fire|burn|way|evening)|throughout|(?:from )?start to (?:finish|end)|(?:from )?beginning to end|all the (?:time|way)|most of (?:it|the (?:time|fire|burn))|all through|non-?stop|till the end|until the end|start, middle and end|never (?:stops|clears))\b/ },
  { asks: IN_THE_FIRE, answers: /\b(?:flames are highest|once it burns strongly|while it burns strongly)/i, weight: 0.95, said: /\b(?:like (?:mad|hell|crazy)|at (?:its|the|their) (?:hottest|highest|peak|fiercest|strongest|biggest)|full (?:blaze|flame|swing|bore|fire|burn)|big(?:gest)? (?:flames?|fire|blaze)|flames? (?:are |is |were )?(?:big|high|tall|at)|(?:burns?|burning|roars?|roaring) (?:\w+ )?(?:strong|hard|fierce|hot)\w*|going (?:strong|full)|in full (?:flame|swing))\b/ },

  // a match's flame, in or out
  { asks: /\bmatch\b/i, answers: /\b(?:leaned in, even|into the firebox)/i, weight: 0.9, said: /\b(?:in|inwards?|inside|pulled|sucked|drawn|draws|pulls)\b(?! the (?:room|door\b(?! a)))/ },
  { asks: /\bmatch\b/i, answers: /\b(?:stood still|it stood|hardly, or not)/i, weight: 0.9, said: /\b(?:still|straight up|upright|(?:did ?n'?t|does ?n'?t|not|never|hardly|barely) (?:move|lean|bend|flicker)\w*|no (?:movement|lean))\b/ },
  { asks: /\bmatch\b/i, answers: /\b(?:leaned out|out, towards|hardly, or not)/i, weight: 0.9, said: /\b(?:out|outwards?|towards?(?: me| my \w+)|into the room|back at me|blew back)\b/ },
  // "air open full" where the answer is a mere yes
  { asks: /\bfully open\b/i, answers: /^open: yes\b/i, weight: 0.9, said: /\b(?:(?:full(?:y)?|wide|all|completely|both|everything|right) open|open (?:full(?:y)?|wide|all the way|right up|completely)|(?:air|damper|lever|slide|wheel) (?:is |was |at |on |full |fully )*(?:open|full|max))\b/ },
  // how a setting fell short of open or of shut
  {
    asks: SETTING, answers: /^(?:half|part|damper|throttled|open)\b.*\b(?:half|partly|not fully|turned down|stays open, or not sure)/i, weight: 0.95,
    said: /\b(?:half ?way|(?:at|to|on|by|only|just) (?:a )?(?:half|third|quarter|three quarters|two thirds)|half (?:open|shut|closed|in|out)|part(?:ly|[ -]?way)|not (?:all the way|fully|quite|completely|wide)(?: open| shut| closed)?|(?:(?:cm|centimet\w+|inch\w*|bit|little|finger|hand|mm|millimet\w+) )+short|stops? (?:short|before|early|halfway)|(?:won'?t|does ?n'?t|doesnt|wont|will not|does not|can'?t|cannot) (?:quite )?(?:close|shut|go|move|reach|slide)(?: \w+)? ?(?:all the way|fully|completely|home|right)?|jammed|nearly (?:shut|closed)|almost (?:shut|closed)|throttled|choked (?:down|back)|turned (?:it )?(?:down|back))\b/,
  },
  { asks: /\b(?:shut|closed)\b.*\bwhen|\bwhen\b.*\b(?:shut|closed)\b/i, answers: /\bboth stayed open/i, weight: 1.2, said: /\bboth\b.*\bopen\b.*\b(?:all night|until|till|overnight|for hours|the whole|over night|in the morning)\b/ },
  { asks: /\b(?:shut|closed)\b.*\bwhen|\bwhen\b.*\b(?:shut|closed)\b/i, answers: /\bair stay(?:s|ed) open\b/i, weight: 0.7, said: /\bair\b.*\bopen\b.*\b(?:all night|until|till|overnight|for hours|the whole|over night|in the morning)\b/ },
  { asks: /\b(?:shut|closed)\b.*\bwhen|\bwhen\b.*\b(?:shut|closed)\b/i, answers: /\b(?:damper when the bed was black|damper over a black bed)\b/i, weight: 0.9, said: /\b(?:dampers?|plate|slide|flue)\b.*\b(?:black|dark|dead|no (?:more )?(?:glow|red|embers|coals)|nothing gl(?:ew|ows))\b/ },
  { asks: HEAT, answers: /^lukewarm\b/, weight: 0.95, said: /\b(?:(?:just|barely|hardly|only|slightly|faintly) (?:about )?(?:feel\w*|warm|lukewarm)|(?:some|a (?:bit|little|touch|hint|trace) of|slight|faint) (?:warmth|heat)|tepid|hand ?warm|body warm|a (?:bit|little) warm)\b/ },
  { asks: PLACE, answers: /\b(?:all over|everywhere|whole (?:house|face|pane)|evenly)\b/i, weight: 0.8, said: /\b(?:all over|everywhere|all (?:the )?rooms|every (?:room|where|part|side)|(?:the )?whole (?:house|pane|glass|thing|heater|face|flat)|all of it|the lot|upstairs too|top to bottom|all (?:a)?round)\b/ },
  { asks: PLACE, answers: /\b(?:one side stays|to one side)\b/i, weight: 0.7, said: /\b(?:(?:the |on the |everything |only )*(?:left|right)(?: hand)?(?: side| half| part)?|one (?:side|half)|(?:north|south|east|west)(?:ern)? side)\b/ },
  { asks: /\bone bang\b/i, answers: /^one\b/, weight: 0.8, said: /\b(?:(?:just |only )?(?:one|a single|a|1) (?:\w+ )?(?:bang|puff|pop|boom|whump|whoomph|thump|poof|go|time)|once|single)\b/ },
  { asks: /\bone bang\b/i, answers: /^beat\b/, weight: 0.9, said: /\b(?:again and again|over and over|(?:three|four|five|six|several|many|lots of|a few|\d+) (?:\w+ )?(?:bangs|puffs|pops|booms|times|thumps)|every (?:few |\d+ |couple of )?(?:seconds?|minutes?)|(\w+),? \1(?:,? \1)?|keeps? (?:puffing|on|doing)|repeated(?:ly)?|rhythm\w*|like (?:breathing|a train|an? (?:old )?(?:engine|locomotive)))\b/ },
  { asks: /\b(?:shut|close)s?\b.*\btight\b|\bdoes it seal\b/i, answers: /^(?:tight|yes|firm)\b/, weight: 0.75, said: /\b(?:(?:shuts?|closes?|seals?|sits?|fits?|is|tests?)(?: \w+)? (?:tight|well|fine|good|firm|snug|ok|properly)|seals? (?:is |are )?(?:good|new|fine)|tight)\b/ },
  { asks: CHANGE, answers: /^no: no, as always/i, weight: 0.9, said: /\b(?:(?:same|as|like)(?: as)?(?: it)? (?:every|last|always|ever|before|usual)|(?:draws?|draught|draft|pulls?|burns?|lights?) (?:\w+ )?(?:ok(?:ay)?|fine|good|well|normal))\b/ },
  { asks: /\bwhen (?:is it wet|do you hear)\b/i, answers: /\b(?:during fires)\b/i, weight: 0.8, said: /\b(?:(?:when|while|whenever|as long as|each time|every time|only if) (?:we|i|it|the fire|they) (?:heat|fire|burn|light|lit|run|use)\w*|(?:with|during|at) (?:a|the|each|every|any) (?:fire|burn|firing))\b/ },
  { asks: /\bin the minutes before\b/i, answers: /^air-shut\b/, weight: 0.9, said: /\b(?:air|damper|slider?|lever|knob|plate)\b.*\b(?:in|down|shut|closed?|back|off|half|third|quarter)\b|\b(?:shut|closed?|turned|pushed|throttled|slid)\b.*\b(?:air|damper|slider?|lever|knob|plate)\b/ },
  { asks: /\bwhen did it die\b/i, answers: /\bdoor ajar\b/i, weight: 1, said: /\bdoor\b.*\b(?:shut|closed?|ajar|a crack|open)\b|\b(?:shut|close|closing|shutting)\b.*\bdoor\b/ },
  { asks: PLACE, answers: /\bsides and corners\b/i, weight: 0.75, said: /\b(?:sides?|walls?|edges?|corners?|left and right|right and left)\b/ },
  { asks: CHANGE, answers: /^nothing\b/, weight: 0.9, said: /\b(?:(?:everything|all|it'?s all|the rest|looks|same) (?:is |was |looks |just )?(?:the )?(?:same|as (?:before|ever|always|usual))|nothing (?:new|different|changed|else|i know)|unchanged|no (?:change|difference)s?|changed nothing)\b/ },
];

const NOT_JUST_BEFORE = /\b(?:not|never|no|n't|isnt|wasnt|didnt|nicht|nie)\s+(?:\w+\s+)?$/;

/** What a clause says so for each answer; 0 where nothing. */
export function commonGround({ ask = "", answers = [] }: Pick<Sign, "ask" | "answers">, clause: string): number[] {
  const plain = clause.toLowerCase().replaceAll("’", "'");
  const out = answers.map(() => 0);
  for (const { asks, answers: meant, said, weight } of MEANINGS) {
    if (!asks.test(ask)) continue;
    const found = said.exec(plain);
    if (!found || NOT_JUST_BEFORE.test(plain.slice(0, found.index))) continue;
    for (const [i, { id, label }] of answers.entries()) if (meant.test(`${id}: ${label}`)) out[i] = Math.max(out[i] ?? 0, weight);
  }
  return out;
}
