/**
 * A margin of safety as it is shown: rounded down, to tenths below 10, since 99.6 shown as 100 would seem to reach what
 * is asked.
 */
export function shownMargin(margin: number): number {
  return margin < 10 ? Math.floor(margin * 10) / 10 : Math.floor(margin);
}
