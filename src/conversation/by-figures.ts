/** What figures and a few set phrases say about the topic more surely than words do: a cord asked for in pounds is a volume, not heat. */
import type { TopicId } from "../topics.ts";
import type { Hearing } from "./hear.ts";

const has = (plain: string, words: RegExp): boolean => words.test(plain);
const METER = /\b(meter|metre|moisture|wet basis|dry basis|wb|db|mc|pin)\b/;
const BURNING = /\b(glass|window|smoke|log|lit|fire|seasoned?|dry by|ready|heat|energy|kwh|load|stack|pile|basket)\b/;
const TONIGHT = /\bhow (much|many)\b.{0,40}\b(wood|kg|kilos?|kilograms?|pounds?|lbs?|baskets?|logs?|splits?|birch|oak|beech|spruce|pine|maple|ash)\b.{0,40}\b(tonight|today|this evening|now)\b|\b(tonight|today)\b.{0,30}\bhow (much|many)\b/;
const START = /\b(walk|guide|talk) (me|us) through\b.{0,30}\bfire\b|\b(start|light|begin) (a|the|my|our|tonight'?s?) (fire|heater|stove)\b.{0,20}\bwith\b/;
const LOGGED = /\b(log|note|write down|record|lit|burnt|burned)\b/;
/** "how many logs is 12 kg": a weight in pieces */
const COUNTED = /\bhow (many|much) (logs?|pieces?|splits?|sticks?|billets?|chunks?)\b.{0,12}\b(is|are|makes?|make|in|for|equals?)\b/;
const MEASURE = /\b(cords?|steres?|ster|raummeter|rm|srm|m3|cubes?|tonnes?|tons?|cubic)\b|m³/;
/** asked for a price in heat, not for leave to close */
const DAMPER_COST = /\b(open (flue )?(damper|flue)|(damper|flue)( being)?( left)? open)\b.{0,40}\b(costs?|lose|loses|waste|wastes)\b|\b(costs?|lose|loses|waste|wastes)\b.{0,60}\b(open (flue )?(damper|flue)|(damper|flue)( being)?( left)? open)\b/;
/** "what load for -12 outside, spruce at 16 %?" asks for a load, whatever it says of the wood */
const LOAD = /\b(?:what|which|how (?:big|large|small|heavy)) (?:a |an |is the |should (?:the|my) )?(?:load|charge|batch)\b|\bload for\b.{0,12}-? ?\d/;
const DRAUGHT = /\b(?:what|how (?:much|strong|good))\b.{0,20}\b(?:draught|draft)\b/;
const DAYS = /\b(plan|days|week|weekend|tomorrow|schedule|when should i (light|fire))\b/;

/** @returns null where the words should decide */
export function byFigures(text: string, heard: Hearing): TopicId | null {
  const plain = text.slice(0, 400).toLowerCase();
  const share = heard.figures.some((figure) => figure.dimension === "share");
  const volume = heard.figures.some((figure) => figure.dimension === "volume");
  // "walk me through a fire with 10 kg" starts one; only what has burnt is written down
  if (START.test(plain) && !LOGGED.test(plain)) return "light-fire";
  const degrees = heard.figures.filter((figure) => figure.dimension === "temperature" || figure.dimension === null).length;
  if (/\breadings?\b/.test(plain) && degrees >= 4 && !METER.test(plain)) return "heat-curve";
  if (DAMPER_COST.test(plain)) return "heat-curve";
  const masses = heard.figures.filter((figure) => figure.dimension === "mass");
  if (masses.length === 1 && COUNTED.test(plain)) return "load-size";
  // "200 euro a cord of oak or 90 for a stere": two offers
  if (heard.figures.filter((figure) => figure.dimension === "money").length > 1 && MEASURE.test(plain) && !LOGGED.test(plain)) return "wood-volume";
  if (TONIGHT.test(plain) && !DAYS.test(plain)) return "load-size";
  if (DRAUGHT.test(plain) && heard.figures.some(({ dimension }) => dimension === "temperature" || dimension === "length")) return "draught";
  if (LOAD.test(plain) && heard.figures.some(({ dimension }) => dimension === "temperature" || dimension === null) && !DAYS.test(plain)) return "load-size";
  // one offer, and whether it is a good one
  if (heard.figures.some(({ dimension }) => dimension === "money") && volume && !LOGGED.test(plain) && /\b(?:good|fair|ok|okay|cheap|dear|expensive|too much|worth|price)\b/.test(plain)) return "wood-volume";
  if (volume && has(plain, /\bhow (many|much)\b/) && has(plain, /\b(kg|kilos?|kilograms?|pounds?|lbs?|tonnes?|weigh|weight|m3|cubic|cords?|stacked|loose)\b/) && !has(plain, /\b(last|winter|heat|kwh|energy|btu)\b/)) return "wood-volume";
  if (share && text.length < 120 && METER.test(plain) && !BURNING.test(plain)) return has(plain, /\b(dry|ok|okay|enough|good|wet|fine)\b/) ? "wood-dryness" : "meter-reading";
  return null;
}
