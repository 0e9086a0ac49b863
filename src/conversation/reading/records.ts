/** Records from free words: each reader gives the fields that fit, sentences about those that do not, and what must be asked. */
export { readAlarms, type AlarmsRead } from "./read-alarms.ts";
export { readFire, type FireRead } from "./read-fire.ts";
export { readHeater } from "./read-heater.ts";
export { LOSS_BY_AGE, readHouse, type HouseRead } from "./read-house.ts";
export { settleMoisture } from "./read-moisture.ts";
export { readUnits, type UnitsRead } from "./read-units.ts";
export { readWeather, type WeatherRead } from "./read-weather.ts";
export { readWood, type WoodRead } from "./read-wood.ts";
export type { Question, Read, ReadContext } from "./statement.ts";
