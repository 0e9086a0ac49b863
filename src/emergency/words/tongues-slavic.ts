import type { Tongue } from "../senses.ts";

/**
 * Danger words of other languages, folded as messages are (no accents). "outlet" words say in themselves that something leaves the
 * chimney; "fireplace" words mean chimney and hearth alike, so a fire in them is not yet a chimney fire.
 */
export const SLAVIC: readonly Tongue[] = [
  { // Polish
    words: {
      many: "wszyscy wszystkich wszystkim dzieci nas",
      one: "mnie żona mąż córka syn mama babcia mam",
      pet: "kot pies",
      ill: "mdłości zawroty wymiot* zemdl* zaczadz* zaczadzenie nieprzytomn* omdla* słabo niedobrze",
      alarm: "czujnik* czujka czujki",
      sounding: "piszczy wyje dzwoni pika alarmuje",
      co: "czad czadu czadem",
      chimney: "komin komina kominie kominem",
      alight: "pali płonie zapaliła zapalił",
      outlet: "iskry płomienie płomień ogień",
      roar: "huczy ryczy dudni",
      smoke: "dym dymu dymem",
      smoke_filled: "zadymione zadymiony zadymiona",
      fill: "pełen pełno pełny wypełnia",
      room: "pokój dom kuchnia dymu mieszkanie",
      damper: "szyber szybra zasuwa zasuwę",
      shut_done: "zamknąłem zamknęłam zamknięty zamknięta zamknął",
      glow: "żar żarzy czerwony",
      burnt: "oparzyłem oparzyłam oparzenie poparzył* oparzył",
      body: "rękę ręka palec palce dłoń",
      ash: "popiół popiołu",
      hot: "gorący gorącym",
      soft_container: "karton kartonie worek worku kosza",
      put: "wsypałem wyrzuciłem wsypałam",
      testing: "testować test sprawdzić",
      neg: "nie nikt brak",
      link: "piec pieca palenia",
    },
    phrases: {
      ill: `
        boli/bolą mnie/nas/go/ją? głowa/głowy
        głowa boli/mnie boli?
        kręci mi/się się/mi? w głowie
        kręci się w głowie
      `,
      alarm: "alarm czadu",
      chimney_fire: `
        pożar komina/sadzy
        pali się w kominie
        sadza się? pali
        komin się? pali
      `,
      history: `
        w zeszłym roku/tygodniu/miesiącu
        rok temu
        zeszłej zimy
      `,
      hypothetical: `
        co jeśli
        co zrobić gdy/jeśli
        gdy czujnik
      `,
    },
  },
  { // Russian
    words: {
      many: "все всех нас нам дети детей",
      one: "мне меня я жена муж ребенок дочь сын мама бабушка дед",
      pet: "кошка кот собака попугай канарейка",
      ill: "тошн* рвот* вырвал* рвет обморок* угорел* угораем отравил* сознания слабость одурман*",
      unwell: "плохо худо",
      sleepy: "сонные сонный вялый вялые",
      alarm: "датчик* сигнализатор* сигнализац* извещател* тревога",
      sounding: "пищит сработал* орет воет звенит пищал запищал визжит сигналит",
      co: "угарн* угар угара угарным",
      chimney: "труба трубы трубе трубу трубой дымоход*",
      alight: "горит горят пылает загорел* полыхает",
      outlet: "искр* плам* огонь",
      roar: "гудит гул ревет рев грохочет",
      likeness: "как",
      engine: "самолет* поезд* паровоз* турбин*",
      smoke: "дым дыма дымом дыму",
      smoke_filled: "задымлен* надымлен*",
      fill: "полн* заполнил* валит",
      room: "комнат* дом доме изба избе кухн* баня бане",
      damper: "вьюшк* задвижк* заслонк* шибер*",
      shut_done: "закры* задвинул*",
      wrong_shut: "рано",
      glow: "угли угольки тле* тлеют красн* пламя огоньки",
      burnt: "обжег обожгл* ожог обжегся обожглась",
      body: "рука руку руки палец пальцы лицо ногу",
      ash: "зола золу золы пепел",
      hot: "горяч* тлеющ*",
      soft_container: "коробк* картон* пакет* ведро мусорк*",
      put: "высыпал* выбросил* насыпал*",
      testing: "проверить проверка проверяю тест",
      neg: "не нет никто никого",
      link: "печь печка печки печку топим топится камин",
    },
    phrases: {
      ill: `
        болит/болят/раскалывается голова/головы
        голова/головы болит/болят/кружится/раскалывается
        кружится голова
        потерял/потеряла сознание
        без сознания
      `,
      smoke_filled: "в дыму",
      chimney_fire: `
        горит сажа
        сажа горит/загорелась
        пожар в трубе/дымоходе
      `,
      history: `
        в прошлом году/месяце
        прошлой зимой
        на прошлой неделе
      `,
      hypothetical: `
        что если
        что делать если
        если датчик
      `,
    },
  },
];
