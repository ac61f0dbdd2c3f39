/** Where a host remembers which libraries were open. */
export const PLACES_FILE = 'places.json';
