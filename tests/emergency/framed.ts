/**
 * Danger told of another time, a film, a book, a drill is no danger now; danger told beside an everyday question is. Each is a frame
 * around a labelled message, "~" where the message goes.
 */
import { seeded } from "../training/seeded.ts";
import type { Labelled } from "./learn.ts";

const CALM_ENGLISH = `
In the film last night: ~
My grandmother's diary of 1931 says: ~
I dreamt this: ~
For the school play my line is: ~
In the novel I'm translating: "~" How would you say that?
A drill for our guests, imaginary case: ~
Suppose one day: ~ What should I do then?
Years ago, before the rebuild: ~ All long mended.
When I was a boy: ~ Good old days.
Back in '74: ~ Father told it every Christmas.
In my uncle's hut in the fifties: ~
I read in the paper about a family abroad: ~
In the course for firemen they acted it out: ~
What if somebody says: ~
~ That was in 1962 and everybody lived.
~ That was two winters ago, the sweep has been since and all is well.
~ Only in the film, mind.
~ So went the story my grandfather told.
~ I made that up for the quiz night.
~ It was last year, all repaired now.
~ Just a dream, all cold and dark here.
~ Not here, in the book I'm reading.
~ That happened at my brother's in spring, dealt with, nobody hurt.
~ Those were the old tenants, before our time.
~ That was last month. What can I do so that it never happens again?
~ It was at Easter, nobody hurt, he still gets teased.
~ That's the line from the song.
~ The fire brigade came, that was in October, and the heater has been cold since.
What would you answer if someone wrote "~"?
Not us: ~ My neighbour told me, years back.
No, no, nothing like: ~ All well here, alarm silent.
`;

const CALM_GERMAN = `
Im Film gestern: ~
Im Tagebuch meiner Großmutter von 1931 steht: ~
Ich hab geträumt: ~
Für das Theaterstück ist mein Satz: ~
Im Roman heißt es: "~"
Eine Übung für unsere Gäste, nur gedacht: ~
Angenommen, eines Tages: ~ Was wäre dann zu tun?
Vor Jahren, vor dem Umbau: ~ Längst alles gerichtet.
Als ich ein Bub war: ~
Damals, 1974: ~ Der Vater hat es jedes Jahr erzählt.
Auf der Hütte vom Onkel in den Fünfzigern: ~
In der Zeitung stand über eine Familie: ~
Im Kurs der Feuerwehr haben sie gespielt: ~
~ Das war 1962, alle haben überlebt.
~ Das war vor zwei Wintern, der Rauchfangkehrer war da, seitdem ist alles in Ordnung.
~ So hat es mein Opa erzählt.
~ Das habe ich mir fürs Quiz ausgedacht.
~ Das war letztes Jahr und ist längst repariert.
~ War nur ein Traum, hier ist alles kalt.
~ Nicht bei uns, im Buch.
~ Das ist meinem Bruder im Frühling passiert, niemand verletzt.
~ Das war letzten Monat. Was kann ich tun, damit es nie wieder vorkommt?
~ Die Feuerwehr war da, im Oktober, der Ofen ist seither kalt.
Was würdest du antworten, wenn jemand schreibt "~"?
Nicht bei uns: ~ Hat der Nachbar erzählt, lange her.
`;

const STILL_DANGER_ENGLISH = `
Last year we had the same and it was nothing, but now: ~
My grandfather had a chimney fire in 1962. And now here: ~
Is it normal? ~
Quick one before dinner: ~
~ Also, what's the best wood for tomorrow?
~ Is that normal?
~ How many kilos tonight?
~ Sorry to bother you so late.
~ Probably nothing.
~ My husband says it's nothing.
~ Could it just be the wind?
~ Is the wood wet?
Good morning, the heater is a beauty. ~
Heater's fine otherwise. ~
How much birch for minus ten? And ~
The sweep was here in May and said all was well. ~
We tested the alarm last week and it was fine. ~
~ Any idea?
~ What do I do?
~ The fire's only two logs.
Plan for tomorrow please. Oh and ~
~ Log it please.
Is it dangerous that ~
~ Nobody else is home.
`;

const STILL_DANGER_GERMAN = `
Letztes Jahr war dasselbe und es war nichts, aber jetzt: ~
Mein Opa hatte 1962 einen Kaminbrand. Und jetzt hier: ~
Ist das normal? ~
Kurze Frage vor dem Essen: ~
~ Und welches Holz nehme ich morgen?
~ Ist das normal?
~ Wie viel Kilo heute Abend?
~ Entschuldigung für die späte Störung.
~ Wahrscheinlich nichts.
~ Mein Mann sagt, das ist nichts.
~ Kann das der Wind sein?
~ Ist das Holz zu nass?
Guten Morgen, der Ofen ist ein Traum. ~
Wie viel Birke bei minus zehn? Und ~
Der Rauchfangkehrer war im Mai da und hat nichts gefunden. ~
Den Melder haben wir letzte Woche geprüft. ~
~ Was mach ich?
~ Trag's bitte ein.
~ Es sind nur zwei Scheite.
`;

interface Frames {
  readonly calm: readonly string[];
  readonly danger: readonly string[];
}

const lines = (text: string): string[] => text.trim().split("\n");
const ENGLISH: Frames = { calm: lines(CALM_ENGLISH), danger: lines(STILL_DANGER_ENGLISH) };
const GERMAN: Frames = { calm: lines(CALM_GERMAN), danger: lines(STILL_DANGER_GERMAN) };

const SEED = 11;
const LONGEST_FRAMED = 160;
const FEWEST_WORDS = 3;
const GERMAN_WORDS = /[äöüß]|\b(der|die|das|und|ist|nicht|ich|wir|im|am|hat|mit|auf|aus|ein|eine|noch|schon|is|net|i|ned|ofen)\b/gi;
const ENGLISH_WORDS = /\b(the|is it|and|my|of|to)\b/i;
const OTHER_LETTERS = /[а-яąęłśżźćńàèìòùáéíóúñçêôåøæ]/i;

function framesFor(text: string): Frames | null {
  if (OTHER_LETTERS.test(text)) return null;
  return (text.match(GERMAN_WORDS)?.length ?? 0) >= 2 && !ENGLISH_WORDS.test(text) ? GERMAN : ENGLISH;
}

/** Every shorter report of danger once in a frame that makes it calm, and once in one that changes nothing. */
export function framed(labelled: readonly Labelled[]): Labelled[] {
  const random = seeded(SEED);
  const within = (frames: readonly string[], text: string): string =>
    (frames[Math.floor(random() * frames.length)] as string).replace("~", () => text);
  return labelled.flatMap((message) => {
    const { kind, text } = message;
    const short = text.length >= LONGEST_FRAMED || text.split(" ").length < FEWEST_WORDS;
    const frames = kind < 0 || short ? null : framesFor(text);
    if (!frames) return [];
    return [
      { ...message, text: within(frames.calm, message.text), kind: -1, weight: 1 },
      { ...message, text: within(frames.danger, message.text), weight: 1 },
    ];
  });
}
