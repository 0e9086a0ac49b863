import type { Language } from "../card.ts";

/** The English cards, line for line. */
export const GERMAN: Language = {
  words: {
    call: "Notruf:",
    never: "Niemals:",
    afterwards: "Danach:",
    fire: "Feuerwehr",
    ambulance: "Rettungsdienst",
    several:
      "112 in Europa und auf den meisten Handys, 911 in Nordamerika, 999 im Vereinigten Königreich, 000 in Australien, 111 in Neuseeland",
  },
  cards: {
    "co-alarm": {
      headline: "Alle sofort raus an die frische Luft: als Kohlenmonoxid behandeln.",
      now: [
        "Alle wecken. Menschen und Tiere nach draußen.",
        "Die Tür beim Gehen offen lassen; sonst mit nichts aufhalten.",
        "Draußen durchzählen, dann von dort anrufen: „Kohlenmonoxid“ sagen.",
        "Draußen bleiben, bis die Feuerwehr gemessen und das Haus freigegeben hat.",
      ],
      brief: "Alarm oder jemandem übel: alle raus, von draußen anrufen.",
      never: [
        "Wieder hineingehen, für niemanden und nichts: auch Retter brechen zusammen.",
        "Den Alarm stumm schalten und bleiben oder ihn für einen Fehlalarm halten.",
        "Zeit mit Fenstern, Schieber oder Feuer verlieren.",
        "Es ausschlafen oder mit Beschwerden Auto fahren.",
      ],
      afterwards: [
        "Bewusstlos, aber Atmung vorhanden: stabile Seitenlage an der frischen Luft. Keine Atmung: Wiederbelebung nach Anweisung der "
          + "Leitstelle.",
        "Beschwerden, Schwangerschaft, Herzkrankheit, sehr jung oder alt: zum Arzt, auch wenn es besser geht; „Verdacht auf "
          + "Kohlenmonoxid“ sagen.",
        "Kein Feuer, bis Schornsteinfeger oder Ofenbauer die Ursache gefunden haben und ein gültiger, geprüfter Melder hängt.",
      ],
      question:
        "Wenn Sie draußen sind: Ist jemandem schwindlig oder übel, hat jemand Kopfschmerzen oder ist ungewöhnlich müde, oder tönt der"
          + " Melder "
        + "viermal oder dauernd? Ein Ja oder ein Zweifel: anrufen. War es nur ein einzelner Piep pro Minute und fühlen sich alle wohl, "
        + "ist es "
        + "meist die Batterie oder das Ende der Lebensdauer: kein Feuer, bis ein neuer hängt.",
      cautions: ["carbon-monoxide"],
    },
    "chimney-fire": {
      headline: "Sofort die Feuerwehr rufen und alle hinaus: als Schornsteinbrand behandeln.",
      now: [
        "Feuerwehr rufen, auch wenn es nachzulassen scheint.",
        "Alle Menschen und Tiere hinaus.",
        "Nur wenn gefahrlos und in Sekunden: Ofentür und Luftklappen schließen. Den Abgasschieber lassen, wie er ist.",
        "Draußen warten, Dach beobachten, Feuerwehr einweisen.",
      ],
      brief: "Tosen, Funken oder Flammen am Schornstein: anrufen, raus.",
      never: [
        "Wasser in Ofen oder Schornstein: der Dampf kann ihn sprengen.",
        "Feuertür oder Reinigungsöffnung öffnen.",
        "Aufs Dach oder auf den Dachboden steigen oder zurück ins Haus gehen.",
        "Ausbrennen lassen oder Salz, Soda und nasses Papier versuchen.",
      ],
      afterwards: [
        "Der Feuerwehr sagen, durch welche Räume der Schornstein geht; Wände und Dachboden können Stunden schwelen. Bei Geruch oder "
          + "Wärme wieder anrufen.",
        "Kein Feuer, bis der Schornsteinfeger den ganzen Zug innen und außen geprüft hat.",
      ],
      question:
        "Von draußen: Sehen Sie Funken, Flammen oder Glut an der Mündung, oder tost es wie ein Zug? "
        + "Ein Ja oder ein Zweifel: die Feuerwehr entscheidet.",
      cautions: ["chimney-fire", "carbon-monoxide"],
    },
    "house-fire": {
      headline: "Alle sofort raus und die Feuerwehr rufen: Es brennt außerhalb des Ofens.",
      now: [
        "Alle Menschen und Tiere hinaus; unter dem Rauch bleiben.",
        "Zimmertüren hinter sich zuziehen, wenn es keine Zeit kostet.",
        "Von draußen die Feuerwehr rufen.",
        "Draußen bleiben, was auch drinnen ist.",
      ],
      brief: "Etwas brennt außerhalb des Ofens: alle raus, anrufen.",
      never: [
        "Wieder hineingehen.",
        "Eine heiße Tür öffnen.",
        "Löschen, was größer ist als ein abdeckbarer Funke, oder mit dem Fluchtweg hinter dem Feuer.",
      ],
      afterwards: [
        "Kleidung brennt: stehen bleiben, hinlegen, wälzen. Verbrennungen: 20 Minuten kühles fließendes Wasser.",
        "Angesengter Boden, Wand oder Dach kann Stunden schwelen: von der Feuerwehr prüfen lassen, auch wenn es aus scheint.",
      ],
      question: "Von draußen: Was brennt oder raucht, und immer noch? Im Zweifel anrufen.",
      cautions: ["fire-outside-the-heater", "carbon-monoxide"],
    },
    "room-smoke": {
      headline: "Alle sofort aus dem Rauch, an die frische Luft.",
      now: [
        "Alle Menschen und Tiere hinaus; unten bleiben.",
        "Nur wenn es keine Zeit kostet: Fenster auf, Abzug und Lüfter aus.",
        "Abgasweg offen und Ofentür zu lassen; kein Holz mehr.",
        "Füllt es den Raum, hört nicht auf oder ist jemandem übel: von draußen anrufen.",
      ],
      brief: "Raum voller Rauch: alle raus, unten bleiben.",
      never: [
        "Den Abgasschieber zuschieben: Rauch und Gas könnten nur noch in den Raum.",
        "In den Rauch zurückgehen.",
        "Feuertür öffnen, Holz nachlegen oder Wasser gießen.",
      ],
      afterwards: [
        "Husten, Atemnot, Kopfschmerzen oder Übelkeit davon: zum Arzt; „Rauch und Verdacht auf Kohlenmonoxid“ sagen.",
        "Kein Feuer, bis Schornsteinfeger oder Ofenbauer die Ursache gefunden haben.",
      ],
      question:
        "Von draußen: Kommt noch Rauch, ist jemandem schwindlig oder übel, hat jemand Kopfschmerzen, tönt ein Melder? Ein Ja: "
        + "anrufen.",
      cautions: ["carbon-monoxide", "smoke"],
    },
    "hot-ash": {
      headline: "Die Asche wie Feuer behandeln: sofort weg von allem, was brennt.",
      now: [
        "Rauch, Flammen oder Schmelzen: alle raus, von draußen die Feuerwehr rufen.",
        "Sonst mit Handschuhen in einen Metalleimer mit dichtem Metalldeckel schaufeln.",
        "Ins Freie auf Stein oder Erde, 3 m von Haus, Holz und Zaun.",
      ],
      brief: "Heiße Asche: Metalleimer, Deckel, draußen, 3 m Abstand.",
      never: [
        "In Papier, Karton, Kunststoff, der Mülltonne oder auf Holzdeck und Veranda lassen.",
        "Den Eimer ins Haus oder in die Garage stellen: Asche gibt Kohlenmonoxid ab.",
        "Saugen oder aus der Nähe Wasser auf heiße Asche gießen: der Dampf verbrüht.",
      ],
      afterwards: [
        "Die Stelle und darunter nach einer Stunde und vor dem Schlafen noch einmal ansehen: Holz schwelt unsichtbar. Geruch oder "
          + "Rauch: anrufen.",
        "Asche bleibt tagelang heiß: mindestens 4 Tage warten, im Zweifel 7. Kinder und Tiere fernhalten.",
      ],
      question: "Wann war das letzte Feuer, und worin liegt die Asche jetzt? Unter 4 Tagen ist sie heiß, wie sie auch aussieht.",
      cautions: ["hot-ash", "carbon-monoxide"],
    },
    burn: {
      headline: "Die Verbrennung sofort unter kühlem fließendem Wasser kühlen, 20 Minuten.",
      now: [
        "Weg von der Hitze. Kleidung brennt: stehen bleiben, hinlegen, wälzen.",
        "Kühles fließendes Wasser darüber, 20 Minuten.",
        "Ringe und lose Kleidung ab; Haftendes lassen. Die Person warm halten.",
        "Kind, Gesicht, Hand, Gelenk, groß, tief oder Blasen: Hilfe rufen.",
      ],
      brief: "Verbrennung: kühles fließendes Wasser, 20 Minuten.",
      never: [
        "Eis, Butter, Creme oder Puder.",
        "Blasen öffnen oder Haftendes abziehen.",
        "Ein Auge reiben: spülen und sofort ansehen lassen.",
      ],
      afterwards: [
        "Locker mit Frischhaltefolie oder sauberem Tuch bedecken.",
        "Rauch oder heißes Gas eingeatmet, heiser oder Husten: Notruf.",
      ],
      question:
        "Ist es ein Kind, das Gesicht, eine Hand oder ein Gelenk, größer als ein Handteller, tief oder mit Blasen? Ein Ja: sofort "
        + "ärztliche Hilfe.",
      cautions: ["burns"],
    },
    "damper-over-embers": {
      headline: "Alle sofort aus dem Raum: Ein Abgasweg, über Glut zu, lässt Kohlenmonoxid herein.",
      now: [
        "Alarm oder jemandem übel: alle aus dem Haus, von draußen anrufen, nichts anfassen.",
        "Sonst alle aus dem Raum; Fenster auf.",
        "Zuerst den Abgasschieber ganz öffnen. Zwei Minuten warten, dann die Luft öffnen.",
        "Die Feuertür nicht öffnen.",
      ],
      brief: "Schieber über Glut zu: Gas; alle fernhalten.",
      never: [
        "Schlafen gehen oder im Raum bleiben, solange der Abgasweg über Flamme oder Glut zu ist.",
        "Die Feuertür öffnen: gesammeltes Gas kann verpuffen.",
        "Den Schieber selbst öffnen, wenn ein Melder tönt oder jemandem übel ist: rausgehen und anrufen.",
      ],
      afterwards: [
        "Den Abgasweg bis zum Morgen offen lassen; der Wärmeverlust ist klein.",
        "Später Kopfschmerzen, Schwindel, Übelkeit oder Müdigkeit: alle raus und anrufen.",
        "Geht er nicht auf: keine Gewalt. Alle raus und die Feuerwehr rufen.",
      ],
      question:
        "Ist jemandem schwindlig oder übel, hat jemand Kopfschmerzen, ist jemand ungewöhnlich müde, oder tönt ein Melder? Ein Ja: aus"
        + " dem Haus und anrufen.",
      cautions: ["carbon-monoxide", "close-down"],
    },
    "back-puff": {
      headline: "Weg vom Ofen: Eine zweite Verpuffung ist üblich.",
      now: [
        "Alle weg von der Ofentür. Nicht öffnen.",
        "Seitlich stehend die Luft langsam, über eine Minute, ganz öffnen.",
        "Jemand verbrannt: kühles fließendes Wasser, 20 Minuten.",
        "Raum voll Rauch, etwas brennt, Alarm oder jemandem übel: alle raus, anrufen.",
      ],
      brief: "Weg von der Ofentür; sie bleibt zu.",
      never: [
        "Die Feuertür öffnen, von vorn hineinsehen oder nachlegen.",
        "Die Luft drosseln: ein ersticktes Feuer macht das Gas, das zündet.",
        "Wasser in den Ofen gießen.",
      ],
      afterwards: [
        "Kalt: Tür, Riegel, Glas, Reinigungsdeckel, Fugen und Zug auf Bewegung und Rußspuren ansehen.",
        "Hat sich etwas bewegt oder ist gebrochen: kein Feuer, bis Schornsteinfeger oder Ofenbauer es gesehen haben.",
      ],
      question: "Ist jemand verletzt, brennt etwas außerhalb des Ofens, und haben sich Tür, Glas oder ein Deckel bewegt?",
      cautions: ["back-puff", "carbon-monoxide"],
    },
  },
  cautions: {
    "carbon-monoxide": "Kohlenmonoxid riecht nicht und tötet im Schlaf. Beschwerden zählen, auch wenn der Melder still ist.",
    "chimney-fire": "Ein Schornsteinbrand kann durch unsichtbare Risse ins Haus: die Feuerwehr entscheidet, wann er aus ist.",
    "fire-outside-the-heater": "Ein kleines Feuer füllt ein Haus in Minuten mit tödlichem Rauch.",
    smoke: "Holzrauch im Haus enthält Kohlenmonoxid: wenige Atemzüge dichten Rauchs können umwerfen.",
    "hot-ash": "Asche und Holzkohle bleiben unter grauer Haut tagelang heiß.",
    burns: "Der örtliche medizinische Notdienst geht dieser Karte vor.",
    "close-down": "Der Abgasweg bleibt offen, bis das Glutbett durchgerecht und im Dunkeln schwarz ist und ein geprüfter CO-Melder hängt.",
    "back-puff": "Unverbranntes Gas in einem erstickten Feuer kann explodieren, wenn Luft dazukommt.",
  },
};
