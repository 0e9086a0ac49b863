import type { PhraseList, WordList } from "../senses.ts";

/**
 * Danger words of other languages, folded as messages are (no accents). "outlet" words say in themselves that something leaves the
 * chimney; "fireplace" words mean chimney and hearth alike, so a fire in them is not yet a chimney fire.
 */
export const OTHER_TONGUES: readonly { readonly words: WordList; readonly phrases: PhraseList }[] = [
  { // German
    words: {
      many: "alle allen uns wir kinder kindern familie gäste",
      one: "ich mir mich mein meine meiner meinem frau mann oma opa tochter sohn mutter vater freundin freund enkel kind",
      pet: "katze hund vogel wellensittich papagei kanarienvogel",
      ill: "schwindl* schwindel* kopfschmerz* kopfweh übel übelkeit erbrech* erbroch* gekotzt kotzen ohnmacht* ohnmächtig* bewusstlos* benommen* zusammengebrochen umgekippt schummrig brummschädel",
      unwell: "schlecht unwohl elend blass",
      sleepy: "müde schläfrig",
      alarm: "melder rauchmelder* kohlenmonoxidmelder* gasmelder* brandmelder* feuermelder* warnmelder* kohlenmonoxidwarner* comelder",
      sounding: "piept piepst piepen piepsen piepts pfeift schrillt heult ertönt tönt losgegangen angesprungen angeschlagen ausgelöst",
      co: "kohlenmonoxid* kohlenmonoxyd rauchgas* kohlendunst",
      chimney: "schornstein* rauchrohr ofenrohr rauchfang",
      fireplace: "kamin esse",
      chimney_fire: "schornsteinbrand kaminbrand rußbrand rauchfangbrand",
      alight: "brennt brennen lichterloh glimmt schwelt",
      flame: "flammen stichflamme", outlet: "flammen funken", spark: "funken funkenflug",
      roar: "tost tosen dröhnt dröhnen rauscht faucht brüllt", engine: "zug düsenjet flugzeug düsentriebwerk",
      likeness: "wie",
      smoke: "rauch qualm", smoke_filled: "verqualmt verraucht", fill: "voll voller quillt", room: "zimmer raum haus wohnung küche bude stube wohnzimmer",
      cough: "husten hustet",
      damper: "schieber klappe absperrschieber abgasklappe", shut_done: "zu geschlossen zugemacht geschlossen", wrong_shut: "früh",
      glow: "glut glüht rot glühend flamme flammen", ash: "asche glut", hot: "heiß heisse heiße glühende warm",
      soft_container: "karton papiertüte plastiktonne mülltonne plastikeimer tüte tonne biotonne restmüll", wood_place: "terrasse balkon veranda holzdeck schuppen",
      put: "gekippt geworfen getan gestellt gekippt geschüttet", burnt: "verbrannt verbrüht", body: "finger arm gesicht fuß", cooking: "kochen",
      bang: "knall explodiert explosion verpuffung", door: "ofentür tür", heater: "ofen kachelofen",
      testing: "testen teste getestet probealarm", neg: "kein keine keinen keiner nicht niemand", link: "ofen feuer schieber",
    },
    phrases: {
      sounding: "geht los\ngeht an\nschlägt/gibt/löst alarm\nlöst aus",
      history: "letztes/voriges jahr\nletzten/vorigen winter/monat/herbst\nletzte/vorige woche/saison",
      hypothetical: "was wenn\nwas tun wenn\nwas mache ich wenn\nfalls",
      shut_done: "zu früh geschlossen/zugemacht/zu\nist zu",
      ill: "dreht sich alles\nkopf tut weh\nkopf dröhnt\nnicht ansprechbar\nwird nicht wach",
    },
  },
  { // Finnish
    words: {
      many: "kaikki kaikilla kaikkia meillä meitä lapset lapsilla lapsia", one: "minua minulla minä vaimo mies äiti isä lapsi", pet: "kissa koira",
      ill: "päänsärk* päätäsärk* päätä huima* huimaus* oksen* oksetta* oksetti pahoinvoi* pyörry* pyört* tajut* tajuton",
      alarm: "varoitin varoitti* hälytin hälytti* häkävaroit* häkähälyt* palovaroit* palohälyt*", sounding: "soi piippaa piipittää ulvoo hälyttää huutaa pärähti laukesi",
      co: "häkä häkää häkämyrkytys hiilimonoksidi*", chimney: "piippu piipusta savupiip* hormi hormissa", chimney_fire: "nokipalo* hormipalo*",
      alight: "palaa liekeissä tulessa", outlet: "liekkejä liekit kipinöitä", roar: "jyrisee humisee kohisee",
      smoke: "savu savua savussa", fill: "täynnä täyttyy täyttää", room: "huone talo tupa mökki keittiö",
      damper: "pelti pellin pellit peltiä", shut_done: "kiinni suljin suljettu sulki sulkenut laitoin", wrong_shut: "aikaisin", glow: "hiillos hiilet hehku* punainen punaisena",
      burnt: "poltin paloi palovamma", body: "käden käteni käsi sormi sormen", ash: "tuhka* tuhkat", testing: "testaan testata testi kokeilen testataan", neg: "ei eivät en",
      soft_container: "pahvilaatikko pahvilaatikkoon muovisankoon paperipussiin roskikseen", put: "kaadoin laitoin", hot: "kuuma kuumaa kuumat",
      link: "takka takan uuni pelti lämmityksen",
    },
    phrases: {
      ill: "pää kipeä\nhuono olo\npäähän sattuu", history: "viime vuonna/talvena/viikolla/kuussa", hypothetical: "mitä jos\njos varoitin/häkävaroitin/palovaroitin soi",
    },
  },
  { // Swedish
    words: {
      many: "alla barnen familjen", one: "jag min fru mannen dottern sonen mormor", pet: "katten hunden",
      ill: "huvudvärk* yrsel illamående svimm* kräks kräkts kräktes medvetslös* yra", unwell: "dåligt sjuk sjuka", sleepy: "trötta trött sömniga",
      alarm: "larmet larm brandvarn* kolmonoxidlarm* kolmonoxidvarn* varnare varnaren koldioxidvarnare rökvarn*", sounding: "tjuter piper ljuder larmar utlöst",
      co: "kolmonoxid* kolos koloxid*", chimney: "skorsten*", chimney_fire: "soteld* skorstensbrand*", alight: "brinner", outlet: "lågor gnistor eldsflammor",
      roar: "dånar mullrar vrålar", smoke: "rök röken", smoke_filled: "rökfyllt rökfylld", fill: "fullt fylld fylls", room: "rummet huset köket stugan",
      damper: "spjäll* skjutspjäll*", shut_done: "stängde stängt stängd stängdes stangde", glow: "glöd glöder glöden rött röd", burnt: "brände bränt brännskada",
      body: "handen fingret fingrarna armen", ash: "aska askan", hot: "het varm glödande", soft_container: "kartong papperspåse plasthink soptunna", put: "hällde slängde ställde la",
      testing: "testar testa test provar", neg: "inte ingen inga inget", link: "kakelugn kakelugnen eldade spjället kaminen",
    },
    phrases: {
      ill: "är yr\nblev yr\nont i huvudet\nmår illa/dåligt", history: "förra året/vintern/veckan/månaden", hypothetical: "vad händer om\ntänk om\nom larmet",
      shut_done: "för tidigt",
    },
  },
  { // French
    words: {
      many: "tous nous toute enfants", one: "mon ma mes femme mari fille fils bébé grand-mère jai je", pet: "chat chien canari perruche",
      ill: "nausée nausées vertige vertiges vomi vomit vomissent vomissements évanoui* migraine malaise inconscient* étourdi* somnolent*", unwell: "malade malades",
      alarm: "alarme détecteur* avertisseur", sounding: "sonne sonné sonner bipe bippe hurle retentit déclenché déclenchée siffle", co: "monoxyde",
      chimney: "conduit", fireplace: "cheminée", alight: "brûle enflammé", outlet: "flammes étincelles", roar: "gronde ronfle vrombit",
      smoke: "fumée", smoke_filled: "enfumé enfumée enfumés", fill: "plein pleine remplit remplie rempli", room: "pièce maison cuisine salon chambre",
      damper: "registre clapet tirette trappe", shut_done: "fermé fermée refermé", glow: "braises rouges rougeoient rougeoie", burnt: "brûlé brûlée brûlure",
      body: "main doigt doigts bras visage", ash: "cendres cendre", hot: "chaudes chaude chauds", put: "mis jeté vidé versé", soft_container: "poubelle sac", wood_place: "terrasse balcon",
      testing: "tester teste essai", neg: "pas aucun aucune personne", link: "poêle feu cheminée",
    },
    phrases: {
      ill: "mal/maux à/de la? tête/crâne/cœur\ntête qui? me? tourne\nla tête tourne\nperdu connaissance", many: "tout le monde\non a/est tous", co: "intoxication au? monoxyde",
      chimney_fire: "feu de/dans cheminée\nfeu dans le conduit\ncheminée est? en/a feu/pris\nconduit est? en/a feu/pris",
      alight: "en feu", history: "lannée dernière\nannée/an/hiver/mois/semaine dernier/dernière/passé/passée", hypothetical: "que faire si\net si\nsi le/mon détecteur\nfaire un feu de cheminée\nbon feu de cheminée",
    },
  },
  { // Italian
    words: {
      many: "tutti noi bambini famiglia", one: "mia mio moglie marito figlia figlio nonna nonno", pet: "gatto cane canarino",
      ill: "nausea vertigini vomito vomita vomitato svenut* capogiro capogiri stordit* incosciente", unwell: "male", alarm: "allarme rilevatore sensore rivelatore",
      sounding: "suona suonando suonato fischia scattato bip squilla", co: "monossido", fireplace: "camino", alight: "brucia bruciando fuoco", outlet: "fiamme scintille",
      roar: "ruggisce rimbomba", smoke: "fumo", fill: "piena pieno riempie riempito invasa riempiendo", room: "stanza casa cucina soggiorno", damper: "serranda valvola",
      shut_done: "chiuso chiusa", glow: "brace braci rossa rosse ardente", burnt: "bruciato bruciata scottato scottata ustione", body: "mano dita dito braccio faccia",
      ash: "cenere ceneri", hot: "calda calde", put: "messo buttato svuotato", soft_container: "cartone sacchetto bidone scatola", testing: "testare testo prova", neg: "nessuno nessun", link: "stufa fuoco",
    },
    phrases: {
      ill: "mal di testa\nmi? gira la testa\nperso i? sensi", chimney: "canna fumaria", alight: "in fiamme\na fuoco", chimney_fire: "incendio nel/del/della camino/canna fumaria?\ncamino in fiamme",
      history: "anno/inverno/mese scorso\nsettimana scorsa", hypothetical: "cosa succede se\ncosa faccio se\nse suona",
    },
  },
  { // Spanish
    words: {
      many: "todos nosotros niños familia", one: "mi esposa marido mujer hija hijo abuela abuelo estoy tengo", pet: "gato perro canario",
      ill: "náuseas náusea maread* mareo mareos vómitos vomitando vomitado vomitó desmay* inconsciente", alarm: "alarma detector", sounding: "suena sonando sonó pita pitando saltado saltó pitido",
      co: "monóxido", fireplace: "chimenea", chimney: "tubo", alight: "ardiendo arde quemando incendiada", outlet: "llamas chispas", roar: "ruge rugido retumba",
      smoke: "humo", fill: "lleno llena llenando", room: "habitación casa cocina salón", damper: "compuerta tiro", shut_done: "cerrado cerré cerrada", glow: "brasas rojas rojo",
      burnt: "quemado quemada quemé quemadura", body: "mano dedo dedos brazo cara", ash: "ceniza cenizas", hot: "caliente calientes", put: "puse tiré eché", soft_container: "caja cartón bolsa basura",
      testing: "probar pruebo prueba", neg: "nadie ninguno", link: "estufa fuego",
    },
    phrases: {
      ill: "dolor/duele de/la cabeza\nme duele la cabeza\nperdió el conocimiento", alight: "en llamas", chimney_fire: "incendio de/en/del la? chimenea/tubo\nchimenea está? ardiendo/en/incendiada llamas?\nfuego en la chimenea salen llamas",
      history: "año/invierno/mes pasado\nsemana pasada", hypothetical: "qué pasa si\nqué hago si\nsi suena",
    },
  },
  { // Polish
    words: {
      many: "wszyscy wszystkich wszystkim dzieci nas", one: "mnie żona mąż córka syn mama babcia mam", pet: "kot pies", ill: "mdłości zawroty wymiot* zemdl* zaczadz* zaczadzenie nieprzytomn* omdla* słabo niedobrze",
      alarm: "czujnik* czujka czujki", sounding: "piszczy wyje dzwoni pika alarmuje", co: "czad czadu czadem", chimney: "komin komina kominie kominem", alight: "pali płonie zapaliła zapalił", outlet: "iskry płomienie płomień ogień",
      roar: "huczy ryczy dudni", smoke: "dym dymu dymem", smoke_filled: "zadymione zadymiony zadymiona", fill: "pełen pełno pełny wypełnia", room: "pokój dom kuchnia dymu mieszkanie", damper: "szyber szybra zasuwa zasuwę",
      shut_done: "zamknąłem zamknęłam zamknięty zamknięta zamknął", glow: "żar żarzy czerwony", burnt: "oparzyłem oparzyłam oparzenie poparzył* oparzył", body: "rękę ręka palec palce dłoń", ash: "popiół popiołu",
      hot: "gorący gorącym", soft_container: "karton kartonie worek worku kosza", put: "wsypałem wyrzuciłem wsypałam", testing: "testować test sprawdzić", neg: "nie nikt brak", link: "piec pieca palenia",
    },
    phrases: {
      ill: "boli/bolą mnie/nas/go/ją? głowa/głowy\ngłowa boli/mnie boli?\nkręci mi/się się/mi? w głowie\nkręci się w głowie", alarm: "alarm czadu", chimney_fire: "pożar komina/sadzy\npali się w kominie\nsadza się? pali\nkomin się? pali",
      history: "w zeszłym roku/tygodniu/miesiącu\nrok temu\nzeszłej zimy", hypothetical: "co jeśli\nco zrobić gdy/jeśli\ngdy czujnik",
    },
  },
  { // Russian
    words: {
      many: "все всех нас нам дети детей", one: "мне меня я жена муж ребенок дочь сын мама бабушка дед", pet: "кошка кот собака попугай канарейка",
      ill: "тошн* рвот* вырвал* рвет обморок* угорел* угораем отравил* сознания слабость одурман*", unwell: "плохо худо", sleepy: "сонные сонный вялый вялые",
      alarm: "датчик* сигнализатор* сигнализац* извещател* тревога", sounding: "пищит сработал* орет воет звенит пищал запищал визжит сигналит", co: "угарн* угар угара угарным",
      chimney: "труба трубы трубе трубу трубой дымоход*", alight: "горит горят пылает загорел* полыхает", outlet: "искр* плам* огонь", roar: "гудит гул ревет рев грохочет", likeness: "как", engine: "самолет* поезд* паровоз* турбин*",
      smoke: "дым дыма дымом дыму", smoke_filled: "задымлен* надымлен*", fill: "полн* заполнил* валит", room: "комнат* дом доме изба избе кухн* баня бане", damper: "вьюшк* задвижк* заслонк* шибер*", shut_done: "закры* задвинул*",
      wrong_shut: "рано", glow: "угли угольки тле* тлеют красн* пламя огоньки", burnt: "обжег обожгл* ожог обжегся обожглась", body: "рука руку руки палец пальцы лицо ногу", ash: "зола золу золы пепел", hot: "горяч* тлеющ*",
      soft_container: "коробк* картон* пакет* ведро мусорк*", put: "высыпал* выбросил* насыпал*", testing: "проверить проверка проверяю тест", neg: "не нет никто никого", link: "печь печка печки печку топим топится камин",
    },
    phrases: {
      ill: "болит/болят/раскалывается голова/головы\nголова/головы болит/болят/кружится/раскалывается\nкружится голова\nпотерял/потеряла сознание\nбез сознания", smoke_filled: "в дыму", chimney_fire: "горит сажа\nсажа горит/загорелась\nпожар в трубе/дымоходе", history: "в прошлом году/месяце\nпрошлой зимой\nна прошлой неделе", hypothetical: "что если\nчто делать если\nесли датчик",
    },
  },
];
