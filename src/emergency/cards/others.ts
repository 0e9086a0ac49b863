import type { EmergencyKind } from "../index.ts";

/** What to do this minute, in one line, for readers whose full card is not written yet; the English card follows. */
export const FIRST_LINES: Readonly<Record<string, Readonly<Record<EmergencyKind, string>>>> = {
  fi: {
    "co-alarm": "Häkävaara: kaikki heti ulos raittiiseen ilmaan. Soita hätänumeroon ulkoa. Älkää menkö takaisin sisään.",
    "chimney-fire": "Nokipalo: soita heti hätänumeroon ja menkää kaikki ulos. Ei vettä, älä avaa luukkua.",
    "house-fire": "Tulipalo: kaikki heti ulos. Soita hätänumeroon ulkoa. Älkää menkö takaisin sisään.",
    "room-smoke": "Kaikki heti pois savusta, ulos raittiiseen ilmaan. Soita hätänumeroon ulkoa.",
    "hot-ash": "Kuuma tuhka on tulipalon vaara. Jos savuaa tai palaa: kaikki ulos ja soita hätänumeroon.",
    burn: "Jäähdytä palovammaa heti viileällä juoksevalla vedellä 20 minuuttia.",
    "damper-over-embers": "Häkävaara: kaikki heti pois huoneesta. Jos joku voi huonosti tai varoitin soi: ulos ja soita hätänumeroon.",
    "back-puff": "Kauemmas tulisijasta. Älä avaa luukkua.",
  },
  sv: {
    "co-alarm": "Fara för kolmonoxid: alla ut i friska luften nu. Ring nödnumret utifrån. Gå inte in igen.",
    "chimney-fire": "Soteld: ring räddningstjänsten nu och gå ut alla. Inget vatten, öppna inte luckan.",
    "house-fire": "Det brinner: alla ut nu. Ring nödnumret utifrån. Gå inte in igen.",
    "room-smoke": "Alla ut ur röken nu, till frisk luft. Ring nödnumret utifrån.",
    "hot-ash": "Het aska kan starta en brand. Om det ryker eller brinner: alla ut och ring nödnumret.",
    burn: "Kyl brännskadan nu under svalt rinnande vatten i 20 minuter.",
    "damper-over-embers":
      "Fara för kolmonoxid: alla ut ur rummet nu. Om någon mår dåligt eller larmet låter: ut ur huset och ring nödnumret.",
    "back-puff": "Håll er undan från ugnen. Öppna inte luckan.",
  },
  fr: {
    "co-alarm": "Danger de monoxyde de carbone : tout le monde dehors, tout de suite. Appelez les secours de l'extérieur. Ne rentrez pas.",
    "chimney-fire": "Feu de cheminée : appelez les pompiers tout de suite et sortez tous. Pas d'eau, n'ouvrez pas la porte du foyer.",
    "house-fire": "Incendie : tout le monde dehors, tout de suite. Appelez les pompiers de l'extérieur. Ne rentrez pas.",
    "room-smoke": "Sortez tous de la fumée, à l'air frais, tout de suite. Appelez les secours de l'extérieur.",
    "hot-ash": "La cendre chaude peut mettre le feu. Si elle fume ou brûle : sortez tous et appelez les pompiers.",
    burn: "Refroidissez la brûlure tout de suite sous l'eau fraîche courante, 20 minutes.",
    "damper-over-embers":
      "Danger de monoxyde de carbone : quittez tous la pièce. Si quelqu'un se sent mal ou si le détecteur sonne : sortez de la maison"
        + " et appelez les secours.",
    "back-puff": "Éloignez-vous du poêle. N'ouvrez pas la porte.",
  },
  it: {
    "co-alarm": "Pericolo di monossido di carbonio: tutti fuori all'aria aperta, subito. Chiamate i soccorsi da fuori. Non rientrate.",
    "chimney-fire":
      "Incendio della canna fumaria: chiamate subito i vigili del fuoco e uscite tutti. Niente acqua, non aprite lo sportello.",
    "house-fire": "Incendio: tutti fuori, subito. Chiamate i vigili del fuoco da fuori. Non rientrate.",
    "room-smoke": "Tutti fuori dal fumo, all'aria aperta, subito. Chiamate i soccorsi da fuori.",
    "hot-ash": "La cenere calda può causare un incendio. Se fuma o brucia: tutti fuori e chiamate i vigili del fuoco.",
    burn: "Raffreddate subito la scottatura sotto acqua corrente fresca per 20 minuti.",
    "damper-over-embers":
      "Pericolo di monossido di carbonio: tutti fuori dalla stanza. Se qualcuno sta male o l'allarme suona: fuori di casa e chiamate "
        + "i soccorsi.",
    "back-puff": "Allontanatevi dalla stufa. Non aprite lo sportello.",
  },
  es: {
    "co-alarm": "Peligro de monóxido de carbono: todos fuera, al aire libre, ya. Llamad a emergencias desde fuera. No volváis a entrar.",
    "chimney-fire": "Incendio de chimenea: llamad ya a los bomberos y salid todos. Nada de agua, no abráis la puerta del fuego.",
    "house-fire": "Incendio: todos fuera, ya. Llamad a los bomberos desde fuera. No volváis a entrar.",
    "room-smoke": "Todos fuera del humo, al aire libre, ya. Llamad a emergencias desde fuera.",
    "hot-ash": "La ceniza caliente puede provocar un incendio. Si humea o arde: todos fuera y llamad a los bomberos.",
    burn: "Enfriad ya la quemadura con agua corriente fresca durante 20 minutos.",
    "damper-over-embers":
      "Peligro de monóxido de carbono: todos fuera de la habitación. Si alguien se siente mal o suena la alarma: fuera de casa y "
        + "llamad a emergencias.",
    "back-puff": "Apartaos de la estufa. No abráis la puerta.",
  },
  pl: {
    "co-alarm": "Groźba zaczadzenia: wszyscy natychmiast na świeże powietrze. Dzwońcie po pomoc z zewnątrz. Nie wracajcie do środka.",
    "chimney-fire": "Pożar komina: natychmiast wezwijcie straż pożarną i wyjdźcie wszyscy. Bez wody, nie otwierajcie drzwiczek.",
    "house-fire": "Pożar: wszyscy natychmiast na zewnątrz. Wezwijcie straż pożarną z zewnątrz. Nie wracajcie do środka.",
    "room-smoke": "Wszyscy natychmiast z dymu na świeże powietrze. Dzwońcie po pomoc z zewnątrz.",
    "hot-ash": "Gorący popiół może wywołać pożar. Jeśli dymi lub się pali: wszyscy na zewnątrz i wezwijcie straż pożarną.",
    burn: "Natychmiast schładzajcie oparzenie chłodną bieżącą wodą przez 20 minut.",
    "damper-over-embers":
      "Groźba zaczadzenia: wszyscy natychmiast z pokoju. Jeśli ktoś źle się czuje lub dzwoni czujnik: z domu i dzwońcie po pomoc.",
    "back-puff": "Odsuńcie się od pieca. Nie otwierajcie drzwiczek.",
  },
  ru: {
    "co-alarm": "Угроза угарного газа: все немедленно на свежий воздух. Звоните в экстренную службу с улицы. Не возвращайтесь в дом.",
    "chimney-fire": "Горит сажа в трубе: немедленно вызовите пожарных, все на улицу. Не лейте воду, не открывайте дверцу.",
    "house-fire": "Пожар: все немедленно на улицу. Вызовите пожарных с улицы. Не возвращайтесь в дом.",
    "room-smoke": "Все немедленно из дыма на свежий воздух. Звоните в экстренную службу с улицы.",
    "hot-ash": "Горячая зола может вызвать пожар. Если дымит или горит: все на улицу и вызовите пожарных.",
    burn: "Немедленно охлаждайте ожог прохладной проточной водой 20 минут.",
    "damper-over-embers":
      "Угроза угарного газа: все немедленно из комнаты. Если кому-то плохо или сработал датчик: все на улицу и звоните в экстренную "
      + "службу.",
    "back-puff": "Отойдите от печи. Не открывайте дверцу.",
  },
};
