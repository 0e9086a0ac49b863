/** A figure read off a carbon monoxide alarm or monitor. */

import type { Scene } from "./scene.ts";

/** Where alarms to EN 50291 must sound in time (30 ppm never within 120 minutes); anything at all in a heated room is looked into. */
const ALARMING_PPM = 30;
const NOTICED_PPM = 15;
const HIGHEST_PPM = 20_000;
const NEAR = 9;

export function reading(scene: Scene): "sure" | "possible" | null {
  const { tokens } = scene.sensed;
  let found: "sure" | "possible" | null = null;
  for (let at = 0; at < scene.length; at += 1) {
    const token = tokens[at];
    if (!token) continue;
    const ppm = wholeNumber(token.word);
    if (ppm === null || ppm < NOTICED_PPM || ppm > HIGHEST_PPM) continue;
    const inPpm = token.word.endsWith("ppm") || scene.has(at + 1, "ppm");
    let ofAlarm = false;
    let shown = false;
    for (let near = Math.max(0, at - NEAR); near <= at + NEAR; near += 1) {
      if (tokens[near]?.sentence !== token.sentence) continue;
      if (scene.has(near, "co") || scene.has(near, "alarm")) ofAlarm = true;
      if (scene.has(near, "readout") && !scene.has(at + 1, "degree")) ofAlarm = true;
      if (scene.has(near, "shown")) shown = true;
    }
    if (!(inPpm && (ofAlarm || shown)) && !(ofAlarm && scene.has(at - 1, "shown"))) continue;
    const seen = scene.circumstances({ from: at, to: at });
    if (["unreal", "past", "joke", "testing"].some((each) => seen.has(each as never)) || scene.inSentence(token.sentence, "norm")) continue;
    if (ppm >= ALARMING_PPM && shown) return "sure";
    found = "possible";
  }
  return found;
}

/** The number a word begins with ("85", "140ppm"), or null. */
function wholeNumber(word: string): number | null {
  let value = 0;
  let digits = 0;
  for (; digits < word.length && digits < 6; digits += 1) {
    const code = word.charCodeAt(digits) - 48;
    if (code < 0 || code > 9) break;
    value = value * 10 + code;
  }
  const rest = word.slice(digits);
  return digits > 0 && (rest === "" || rest === "ppm") ? value : null;
}
