/** What the weather makes of tonight's fire. Common practice, no source, but for the least difference, which is physics with a margin. */
export type WeatherKind = "deep-cold" | "mild-weather" | null;

/** Below this people close early to save heat, and one fire may not do. */
const DEEP_COLD_C = -15;
/** Above this at the day's coldest, a chimney draws weakly. */
const MILD_C = 10;
/** With less between indoors and outdoors a chimney cannot be relied on: a 5 m flue has under 1 Pa then. */
const LEAST_DIFFERENCE_K = 5;

export const weatherKind = (low_C: number): WeatherKind => (low_C <= DEEP_COLD_C ? "deep-cold" : low_C >= MILD_C ? "mild-weather" : null);

/** @param low_C the coldest it gets: when even that is too warm, no hour of the night draws */
export const tooWarmToDraw = (low_C: number, inside_C: number): boolean => inside_C - low_C < LEAST_DIFFERENCE_K;
