import type { Tongue } from "../senses.ts";

/**
 * Danger words of other languages, folded as messages are (no accents). "outlet" words say in themselves that something leaves the
 * chimney; "fireplace" words mean chimney and hearth alike, so a fire in them is not yet a chimney fire.
 */
export const ROMANCE: readonly Tongue[] = [
  { // French
    words: {
      many: "tous nous toute enfants",
      one: "mon ma mes femme mari fille fils bébé grand-mère jai je",
      pet: "chat chien canari perruche",
      ill: `
        nausée nausées vertige vertiges vomi vomit vomissent vomissements évanoui* migraine malaise inconscient* étourdi* somnolent*
      `,
      unwell: "malade malades",
      alarm: "alarme détecteur* avertisseur",
      sounding: "sonne sonné sonner bipe bippe hurle retentit déclenché déclenchée siffle",
      co: "monoxyde",
      chimney: "conduit",
      fireplace: "cheminée",
      alight: "brûle enflammé",
      outlet: "flammes étincelles",
      roar: "gronde ronfle vrombit",
      smoke: "fumée",
      smoke_filled: "enfumé enfumée enfumés",
      fill: "plein pleine remplit remplie rempli",
      room: "pièce maison cuisine salon chambre",
      damper: "registre clapet tirette trappe",
      shut_done: "fermé fermée refermé",
      glow: "braises rouges rougeoient rougeoie",
      burnt: "brûlé brûlée brûlure",
      body: "main doigt doigts bras visage",
      ash: "cendres cendre",
      hot: "chaudes chaude chauds",
      put: "mis jeté vidé versé",
      soft_container: "poubelle sac",
      wood_place: "terrasse balcon",
      testing: "tester teste essai",
      neg: "pas aucun aucune personne",
      link: "poêle feu cheminée",
    },
    phrases: {
      ill: `
        mal/maux à/de la? tête/crâne/cœur
        tête qui? me? tourne
        la tête tourne
        perdu connaissance
      `,
      many: `
        tout le monde
        on a/est tous
      `,
      co: "intoxication au? monoxyde",
      chimney_fire: `
        feu de/dans cheminée
        feu dans le conduit
        cheminée est? en/a feu/pris
        conduit est? en/a feu/pris
      `,
      alight: "en feu",
      history: `
        lannée dernière
        année/an/hiver/mois/semaine dernier/dernière/passé/passée
      `,
      hypothetical: `
        que faire si
        et si
        si le/mon détecteur
        faire un feu de cheminée
        bon feu de cheminée
      `,
    },
  },
  { // Italian
    words: {
      many: "tutti noi bambini famiglia",
      one: "mia mio moglie marito figlia figlio nonna nonno",
      pet: "gatto cane canarino",
      ill: "nausea vertigini vomito vomita vomitato svenut* capogiro capogiri stordit* incosciente",
      unwell: "male",
      alarm: "allarme rilevatore sensore rivelatore",
      sounding: "suona suonando suonato fischia scattato bip squilla",
      co: "monossido",
      fireplace: "camino",
      alight: "brucia bruciando fuoco",
      outlet: "fiamme scintille",
      roar: "ruggisce rimbomba",
      smoke: "fumo",
      fill: "piena pieno riempie riempito invasa riempiendo",
      room: "stanza casa cucina soggiorno",
      damper: "serranda valvola",
      shut_done: "chiuso chiusa",
      glow: "brace braci rossa rosse ardente",
      burnt: "bruciato bruciata scottato scottata ustione",
      body: "mano dita dito braccio faccia",
      ash: "cenere ceneri",
      hot: "calda calde",
      put: "messo buttato svuotato",
      soft_container: "cartone sacchetto bidone scatola",
      testing: "testare testo prova",
      neg: "nessuno nessun",
      link: "stufa fuoco",
    },
    phrases: {
      ill: `
        mal di testa
        mi? gira la testa
        perso i? sensi
      `,
      chimney: "canna fumaria",
      alight: `
        in fiamme
        a fuoco
      `,
      chimney_fire: `
        incendio nel/del/della camino/canna fumaria?
        camino in fiamme
      `,
      history: `
        anno/inverno/mese scorso
        settimana scorsa
      `,
      hypothetical: `
        cosa succede se
        cosa faccio se
        se suona
      `,
    },
  },
  { // Spanish
    words: {
      many: "todos nosotros niños familia",
      one: "mi esposa marido mujer hija hijo abuela abuelo estoy tengo",
      pet: "gato perro canario",
      ill: "náuseas náusea maread* mareo mareos vómitos vomitando vomitado vomitó desmay* inconsciente",
      alarm: "alarma detector",
      sounding: "suena sonando sonó pita pitando saltado saltó pitido",
      co: "monóxido",
      fireplace: "chimenea",
      chimney: "tubo",
      alight: "ardiendo arde quemando incendiada",
      outlet: "llamas chispas",
      roar: "ruge rugido retumba",
      smoke: "humo",
      fill: "lleno llena llenando",
      room: "habitación casa cocina salón",
      damper: "compuerta tiro",
      shut_done: "cerrado cerré cerrada",
      glow: "brasas rojas rojo",
      burnt: "quemado quemada quemé quemadura",
      body: "mano dedo dedos brazo cara",
      ash: "ceniza cenizas",
      hot: "caliente calientes",
      put: "puse tiré eché",
      soft_container: "caja cartón bolsa basura",
      testing: "probar pruebo prueba",
      neg: "nadie ninguno",
      link: "estufa fuego",
    },
    phrases: {
      ill: `
        dolor/duele de/la cabeza
        me duele la cabeza
        perdió el conocimiento
      `,
      alight: "en llamas",
      chimney_fire: `
        incendio de/en/del la? chimenea/tubo
        chimenea está? ardiendo/en/incendiada llamas?
        fuego en la chimenea salen llamas
      `,
      history: `
        año/invierno/mes pasado
        semana pasada
      `,
      hypothetical: `
        qué pasa si
        qué hago si
        si suena
      `,
    },
  },
];
