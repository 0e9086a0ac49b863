import type { Tongue } from "../senses.ts";

/**
 * Danger words of other languages, folded as messages are (no accents). "outlet" words say in themselves that something leaves the
 * chimney; "fireplace" words mean chimney and hearth alike, so a fire in them is not yet a chimney fire.
 */
export const GERMANIC_AND_FINNIC: readonly Tongue[] = [
  { // German
    words: {
      many: "alle allen uns wir kinder kindern familie gäste",
      one: "ich mir mich mein meine meiner meinem frau mann oma opa tochter sohn mutter vater freundin freund enkel kind",
      pet: "katze hund vogel wellensittich papagei kanarienvogel",
      ill: `
        schwindl* schwindel* kopfschmerz* kopfweh übel übelkeit erbrech* erbroch* gekotzt kotzen ohnmacht* ohnmächtig* bewusstlos*
        benommen* zusammengebrochen umgekippt schummrig brummschädel
      `,
      unwell: "schlecht unwohl elend blass",
      sleepy: "müde schläfrig",
      alarm: `
        melder rauchmelder* kohlenmonoxidmelder* gasmelder* brandmelder* feuermelder* warnmelder* kohlenmonoxidwarner* comelder
      `,
      sounding: `
        piept piepst piepen piepsen piepts pfeift schrillt heult ertönt tönt losgegangen angesprungen angeschlagen ausgelöst
      `,
      co: "kohlenmonoxid* kohlenmonoxyd rauchgas* kohlendunst",
      chimney: "schornstein* rauchrohr ofenrohr rauchfang",
      fireplace: "kamin esse",
      chimney_fire: "schornsteinbrand kaminbrand rußbrand rauchfangbrand",
      alight: "brennt brennen lichterloh glimmt schwelt",
      flame: "flammen stichflamme",
      outlet: "flammen funken",
      spark: "funken funkenflug",
      roar: "tost tosen dröhnt dröhnen rauscht faucht brüllt",
      engine: "zug düsenjet flugzeug düsentriebwerk",
      likeness: "wie",
      smoke: "rauch qualm",
      smoke_filled: "verqualmt verraucht",
      fill: "voll voller quillt",
      room: "zimmer raum haus wohnung küche bude stube wohnzimmer",
      cough: "husten hustet",
      damper: "schieber klappe absperrschieber abgasklappe",
      shut_done: "zu geschlossen zugemacht",
      wrong_shut: "früh",
      glow: "glut glüht rot glühend flamme flammen",
      ash: "asche glut",
      hot: "heiß heisse heiße glühende warm",
      soft_container: "karton papiertüte plastiktonne mülltonne plastikeimer tüte tonne biotonne restmüll",
      wood_place: "terrasse balkon veranda holzdeck schuppen",
      put: "gekippt geworfen getan gestellt geschüttet",
      burnt: "verbrannt verbrüht",
      body: "finger arm gesicht fuß",
      cooking: "kochen",
      bang: "knall explodiert explosion verpuffung",
      door: "ofentür tür",
      heater: "ofen kachelofen",
      testing: "testen teste getestet probealarm",
      neg: "kein keine keinen keiner nicht niemand",
      link: "ofen feuer schieber",
    },
    phrases: {
      sounding: `
        geht los
        geht an
        schlägt/gibt/löst alarm
        löst aus
      `,
      history: `
        letztes/voriges jahr
        letzten/vorigen winter/monat/herbst
        letzte/vorige woche/saison
      `,
      hypothetical: `
        was wenn
        was tun wenn
        was mache ich wenn
        falls
      `,
      shut_done: `
        zu früh geschlossen/zugemacht/zu
        ist zu
      `,
      ill: `
        dreht sich alles
        kopf tut weh
        kopf dröhnt
        nicht ansprechbar
        wird nicht wach
      `,
    },
  },
  { // Finnish
    words: {
      many: "kaikki kaikilla kaikkia meillä meitä lapset lapsilla lapsia",
      one: "minua minulla minä vaimo mies äiti isä lapsi",
      pet: "kissa koira",
      ill: "päänsärk* päätäsärk* päätä huima* huimaus* oksen* oksetta* oksetti pahoinvoi* pyörry* pyört* tajut* tajuton",
      alarm: "varoitin varoitti* hälytin hälytti* häkävaroit* häkähälyt* palovaroit* palohälyt*",
      sounding: "soi piippaa piipittää ulvoo hälyttää huutaa pärähti laukesi",
      co: "häkä häkää häkämyrkytys hiilimonoksidi*",
      chimney: "piippu piipusta savupiip* hormi hormissa",
      chimney_fire: "nokipalo* hormipalo*",
      alight: "palaa liekeissä tulessa",
      outlet: "liekkejä liekit kipinöitä",
      roar: "jyrisee humisee kohisee",
      smoke: "savu savua savussa",
      fill: "täynnä täyttyy täyttää",
      room: "huone talo tupa mökki keittiö",
      damper: "pelti pellin pellit peltiä",
      shut_done: "kiinni suljin suljettu sulki sulkenut laitoin",
      wrong_shut: "aikaisin",
      glow: "hiillos hiilet hehku* punainen punaisena",
      burnt: "poltin paloi palovamma",
      body: "käden käteni käsi sormi sormen",
      ash: "tuhka* tuhkat",
      testing: "testaan testata testi kokeilen testataan",
      neg: "ei eivät en",
      soft_container: "pahvilaatikko pahvilaatikkoon muovisankoon paperipussiin roskikseen",
      put: "kaadoin laitoin",
      hot: "kuuma kuumaa kuumat",
      link: "takka takan uuni pelti lämmityksen",
    },
    phrases: {
      ill: `
        pää kipeä
        huono olo
        päähän sattuu
      `,
      history: "viime vuonna/talvena/viikolla/kuussa",
      hypothetical: `
        mitä jos
        jos varoitin/häkävaroitin/palovaroitin soi
      `,
    },
  },
  { // Swedish
    words: {
      many: "alla barnen familjen",
      one: "jag min fru mannen dottern sonen mormor",
      pet: "katten hunden",
      ill: "huvudvärk* yrsel illamående svimm* kräks kräkts kräktes medvetslös* yra",
      unwell: "dåligt sjuk sjuka",
      sleepy: "trötta trött sömniga",
      alarm: "larmet larm brandvarn* kolmonoxidlarm* kolmonoxidvarn* varnare varnaren koldioxidvarnare rökvarn*",
      sounding: "tjuter piper ljuder larmar utlöst",
      co: "kolmonoxid* kolos koloxid*",
      chimney: "skorsten*",
      chimney_fire: "soteld* skorstensbrand*",
      alight: "brinner",
      outlet: "lågor gnistor eldsflammor",
      roar: "dånar mullrar vrålar",
      smoke: "rök röken",
      smoke_filled: "rökfyllt rökfylld",
      fill: "fullt fylld fylls",
      room: "rummet huset köket stugan",
      damper: "spjäll* skjutspjäll*",
      shut_done: "stängde stängt stängd stängdes stangde",
      glow: "glöd glöder glöden rött röd",
      burnt: "brände bränt brännskada",
      body: "handen fingret fingrarna armen",
      ash: "aska askan",
      hot: "het varm glödande",
      soft_container: "kartong papperspåse plasthink soptunna",
      put: "hällde slängde ställde la",
      testing: "testar testa test provar",
      neg: "inte ingen inga inget",
      link: "kakelugn kakelugnen eldade spjället kaminen",
    },
    phrases: {
      ill: `
        är yr
        blev yr
        ont i huvudet
        mår illa/dåligt
      `,
      history: "förra året/vintern/veckan/månaden",
      hypothetical: `
        vad händer om
        tänk om
        om larmet
      `,
      shut_done: "för tidigt",
    },
  },
];
