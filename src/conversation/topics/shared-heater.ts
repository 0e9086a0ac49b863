/** "I fire Ana's heater too": asked of its owner, and true only once the owner has said yes. */
import { say, text, verbatim } from "../../answer.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { plain } from "./group-share.ts";

const ASKS = /^(?:please )?(?:i (?:also |sometimes )?(?:fire|light|look after)|(?:let|may) (?:me|i) (?:also )?(?:fire|light)|i(?:'d| would) like to (?:also )?(?:fire|light)) (.{1,60}?)'?s? (?:heater|stove|masonry heater)(?: too| as well| also)?$/i;

/** Whose heater somebody says that they fire, as it was written. */
export function heaterOfWhom(words: string): string | null {
  const name = ASKS.exec(words.replace(/[’]/g, "'").replace(/[.!?\s]+$/, "").trim())?.[1]?.trim();
  return name && !/^(?:my|our|the|a|this|that|it|his|her|their)\b/i.test(name) ? name : null;
}

/** Null for somebody without a group: then the name may be anything. */
export function askToFire(context: Context): Outcome | null {
  const name = heaterOfWhom(context.text);
  const { groups = [], group, person } = context.snapshot;
  if (!name || groups.length === 0 || !group) return null;
  const owners = group.owners.filter((owner) => owner.person_id !== person.id);
  const [owner, ...others] = owners;
  if (!owner || others.length > 0) return plain(owner ? "heater.several" : "heater.nobody", say(text("heater.nobody-how")));
  if (owner.member_ids.includes(person.id)) return plain("heater.already");
  const place_id = group.private_place ?? context.snapshot.place.id;
  return {
    draft: { topic: "set-heater", headline: text("heater.asked", { owner: verbatim(owner.name) }), blocks: [say(text("heater.asked-what"))] },
    also_tell: [{
      key: context.id("heater-asked"), person_id: owner.person_id, place_id: owner.place_id,
      draft: {
        topic: "set-heater",
        headline: text("heater.wants", { who: person.name ? verbatim(person.name) : text("group.member") }),
        blocks: blocks(say(text("heater.wants-what")), { kind: "choices", cautions: [], choices: [{ id: `heater:let=${person.id}@${place_id}`, label: text("heater.let") }, { id: `heater:refuse=${person.id}@${place_id}`, label: text("heater.refuse") }] }),
      },
    }],
  };
}

/** `heater:let=<person>@<place>`: the owner's word, about the owner's own heater. */
export function heaterChoice(context: Context, rest: string): Outcome | null {
  const [what, who = ""] = rest.split("=");
  const [person_id = "", place_id = ""] = who.split("@");
  const { snapshot } = context;
  const heater = snapshot.heaters.find(({ owner_id }) => owner_id === snapshot.person.id);
  if ((what !== "let" && what !== "refuse") || person_id === "" || person_id === snapshot.person.id) return null;
  if (what === "refuse") return { draft: { topic: "set-heater", headline: text("heater.refused") } };
  if (!heater) return { draft: { topic: "set-heater", headline: text("heater.none-own") } };
  return {
    draft: { topic: "set-heater", headline: text("heater.lets"), blocks: [say(text("heater.lets-what"))] },
    writes: [{ write: "join-heater", heater_id: heater.id, person_id }],
    also_tell: [{
      key: context.id("heater-let"), person_id, place_id,
      draft: { topic: "set-heater", headline: text("heater.may", { owner: snapshot.person.name ? verbatim(snapshot.person.name) : text("group.member") }), blocks: [say(text("heater.may-what"))] },
    }],
  };
}
