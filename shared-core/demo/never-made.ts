/** What is said of every formula of the demonstration, on screen and on every sheet, for as long as its notes say it. */
export const NEVER_MADE = 'never made or tested';
