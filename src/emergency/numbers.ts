/**
 * Numbers that reach help in a fire or a poisoning, by country (ISO 3166-1 alpha-2; XK is the customary code for Kosovo).
 * 112 in the EU: Directive (EU) 2018/1972, article 109. Every other row is from memory of public numbers.
 */

export interface Numbers {
  /** One number for everything. */
  readonly any?: string;
  readonly fire?: string;
  readonly ambulance?: string;
}

const ROWS: readonly (readonly [countries: string, numbers: Numbers])[] = [
  ["BE BG HR CY CZ DK EE FI FR DE GR HU IT LV LT LU MT NL PL PT RO SK SI ES SE", { any: "112" }],
  ["IS LI AD SM MC VA MK ME XK TR GE MD FO AX GL", { any: "112" }],
  ["AT", { any: "112", fire: "122" }],
  ["CH", { any: "112", fire: "118" }],
  ["IE", { any: "112 / 999" }],
  ["GB IM JE GG GI", { any: "999 / 112" }],
  ["RU UA KZ AM AZ", { any: "112", fire: "101" }],
  ["NO", { fire: "110", ambulance: "113" }],
  ["BY KG UZ MN", { fire: "101", ambulance: "103" }],
  ["RS", { fire: "193", ambulance: "194" }],
  ["BA", { fire: "123", ambulance: "124" }],
  ["AL", { fire: "128", ambulance: "127" }],
  ["US CA PR VI GU AS MP MX PA CR DO BS BZ UY BM", { any: "911" }],
  ["AR", { any: "911", fire: "100" }],
  ["CL", { fire: "132", ambulance: "131" }],
  ["BR", { fire: "193", ambulance: "192" }],
  ["PE", { fire: "116", ambulance: "106" }],
  ["CO", { any: "123" }],
  ["AU NF CX CC", { any: "000 / 112" }],
  ["NZ", { any: "111" }],
  ["JP KR TW", { any: "119" }],
  ["CN", { fire: "119", ambulance: "120" }],
  ["HK MO", { any: "999" }],
  ["SG", { any: "995" }],
  ["IN", { any: "112", fire: "101" }],
  ["NP", { fire: "101", ambulance: "102" }],
  ["IL", { fire: "102", ambulance: "101" }],
  ["IR", { fire: "125", ambulance: "115" }],
  ["ZA", { any: "112 / 10177" }],
];

const NUMBERS_OF: ReadonlyMap<string, Numbers> = new Map(
  ROWS.flatMap(([countries, numbers]) => countries.split(" ").map((country) => [country, numbers] as const)),
);

export const KNOWN_COUNTRIES: readonly string[] = [...NUMBERS_OF.keys()];

/** The words around the numbers, by language. */
export interface NumberWords {
  readonly fire: string;
  readonly ambulance: string;
  /** For a reader whose country is not known. */
  readonly several: string;
}

const ENGLISH: NumberWords = {
  fire: "fire",
  ambulance: "ambulance",
  several: "112 in Europe and on most mobiles, 911 in North America, 999 in the UK, 000 in Australia, 111 in New Zealand",
};

export function numbersKnown(country: string | null | undefined): boolean {
  return NUMBERS_OF.has(codeOf(country));
}

/** The numbers of the country; several, each with its region, when the country is not given or not in the table. */
export function emergencyNumbers(country?: string | null, words: NumberWords = ENGLISH): string {
  const numbers = NUMBERS_OF.get(codeOf(country));
  if (!numbers) return words.several;
  const named = [
    numbers.any,
    numbers.fire && `${words.fire} ${numbers.fire}`,
    numbers.ambulance && `${words.ambulance} ${numbers.ambulance}`,
  ];
  return named.filter((part) => part !== undefined).join(", ");
}

function codeOf(country: string | null | undefined): string {
  return typeof country === "string" ? country.trim().toUpperCase() : "";
}
