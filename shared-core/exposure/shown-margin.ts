/** Room for the binary noise of products and quotients, relative to the margin; far below what any dose is known to. */
const NOISE = 1e-12;

/**
 * A margin of safety as it is shown: rounded down, to tenths below 10, since 99.6 shown as 100 would seem to reach what
 * is asked. What is 100 but for binary noise is 100.
 */
export function shownMargin(margin: number): number {
  const exact = margin * (1 + NOISE);
  return exact < 10 ? Math.floor(exact * 10) / 10 : Math.floor(exact);
}
