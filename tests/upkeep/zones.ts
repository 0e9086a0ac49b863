/** Forty zones with a place in each: both hemispheres, every kind of summer time and none. */
export const ZONES: readonly { readonly zone: string; readonly latitude: number; readonly longitude: number }[] = (
  [
    ["Europe/Helsinki", 60.2, 24.9], ["Europe/Stockholm", 59.3, 18.1], ["Europe/Oslo", 59.9, 10.7], ["Europe/Copenhagen", 55.7, 12.6], ["Europe/Berlin", 52.5, 13.4],
    ["Europe/Vienna", 48.2, 16.4], ["Europe/Zurich", 47.4, 8.5], ["Europe/Rome", 46.5, 11.3], ["Europe/Paris", 48.8, 2.3], ["Europe/London", 51.5, -0.1],
    ["Europe/Dublin", 53.3, -6.3], ["Europe/Warsaw", 52.2, 21.0], ["Europe/Prague", 50.1, 14.4], ["Europe/Vilnius", 54.7, 25.3], ["Europe/Minsk", 53.9, 27.6],
    ["Europe/Moscow", 55.8, 37.6], ["Europe/Sofia", 42.7, 23.3], ["Europe/Madrid", 40.4, -3.7], ["Atlantic/Reykjavik", 64.1, -21.9], ["America/New_York", 42.4, -71.1],
    ["America/Toronto", 43.7, -79.4], ["America/Montreal", 45.5, -73.6], ["America/Chicago", 44.9, -93.3], ["America/Denver", 39.7, -105.0], ["America/Los_Angeles", 45.5, -122.7],
    ["America/Vancouver", 49.2, -123.1], ["America/Edmonton", 51.0, -114.1], ["America/Anchorage", 64.8, -147.7], ["America/Santiago", -38.7, -72.6], ["America/Punta_Arenas", -53.1, -70.9],
    ["America/Argentina/Buenos_Aires", -41.1, -71.3], ["Africa/Johannesburg", -26.2, 28.0], ["Australia/Sydney", -35.3, 149.1], ["Australia/Melbourne", -37.6, 143.9], ["Australia/Hobart", -42.9, 147.3],
    ["Australia/Adelaide", -34.9, 138.6], ["Australia/Lord_Howe", -33.9, 151.2], ["Pacific/Auckland", -43.5, 172.6], ["Pacific/Chatham", -45.9, 170.5], ["Asia/Tokyo", 43.1, 141.3],
  ] as const
).map(([zone, latitude, longitude]) => ({ zone, latitude, longitude }));
