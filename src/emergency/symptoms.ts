/**
 * People or animals who are unwell near a heater: carbon monoxide until somebody has measured that it is not.
 * Practice: symptoms count even with the alarm quiet, a joke in the message, or a single person.
 */

import { finds, type Scene, wanted } from "./scene.ts";

const WHO = "i|many|one|pet";
const CERTAIN = wanted(WHO, "ill|felled");
const PET_FELLED = wanted("pet", "dead");
const WEAK = wanted("i|many|one|pet", "unwell");
const SLEEPY = wanted("many|pet", "sleepy");
const BARE = wanted("ill");
const BETTER = wanted("ill|unwell|felled|sleepy", "better_out");

export function symptoms(scene: Scene): "sure" | "possible" | null {
  if (scene.inMessage("hairball")) return null;
  const linked = scene.inMessage("link");
  let found: "sure" | "possible" | null = null;
  const note = (sure: boolean): void => {
    if (sure) found = "sure";
    else found ??= "possible";
  };
  for (const find of finds(scene, BETTER, 12, 1)) {
    const seen = scene.circumstances(find);
    if (!seen.has("past") && !seen.has("joke")) note(true);
  }
  for (const [want, span] of [[CERTAIN, 7], [PET_FELLED, 4]] as const) {
    for (const find of finds(scene, want, span)) {
      const seen = scene.circumstances(find);
      if (seen.has("past") || seen.has("joke")) continue;
      if (scene.inMessage("excuse") && !linked) continue;
      note(!seen.has("unreal") && (linked || several(scene)));
    }
  }
  for (const [want, span] of [[WEAK, 5], [SLEEPY, 6]] as const) {
    for (const find of finds(scene, want, span)) {
      const seen = scene.circumstances(find);
      if (seen.has("past") || seen.has("joke") || seen.has("unreal")) continue;
      if (scene.inMessage("excuse")) continue;
      if (want === SLEEPY && !linked) continue;
      note(linked && several(scene));
    }
  }
  for (const find of finds(scene, BARE, 0)) {
    const seen = scene.circumstances(find);
    if (seen.has("past") || seen.has("joke") || seen.has("unreal") || seen.has("general") || scene.inMessage("generic")) continue;
    if (scene.inMessage("excuse") && !linked) continue;
    note(linked);
  }
  return found;
}

function several(scene: Scene): boolean {
  return scene.inMessage("many") || scene.inMessage("pet");
}
