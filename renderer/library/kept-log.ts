import type { LibraryStatus } from './store';

type KeptLog = NonNullable<NonNullable<LibraryStatus['open']>['keptLog']>;

/** How many of something, in words: "one change", "12 changes". */
function counted(count: number, noun: string, plural: string, number: (value: number) => string): string {
  return count === 1 ? `one ${noun}` : `${number(count)} ${plural}`;
}

/**
 * What a maker is told of a library opened with a part of its log only.
 * @param number writes a number as the region does
 */
export function saidOfKeptLog(
  { taken, left, keptAs }: KeptLog,
  number: (value: number) => string,
): { title: string; detail: string } {
  const title =
    taken === 0
      ? 'Open as its file was last written, without its change log.'
      : `Open with ${counted(taken, 'change', 'changes', number)} from its damaged log.`;
  const kept = `The whole log is kept, unchanged, as ${keptAs}`;
  if (left === 0) return { title, detail: kept };
  const missing = `${counted(left, 'entry', 'entries', number)} of the log could not be used`;
  const after = taken === 0 ? 'Not in it' : 'What came after the damage is not in it';
  return {
    title,
    detail: `${after}: ${missing}. Look at what you changed last, and enter again what is missing. ${kept}`,
  };
}

/** What the button that does it is called, before it is done. */
export function offerOfGoodLog(taken: number, number: (value: number) => string): string {
  return taken === 0
    ? 'Open it without this log'
    : `Open it with the ${counted(taken, 'change', 'changes', number)} before the damage`;
}

/** What a maker is told where the end of the log was not a whole change. */
export const UNFINISHED = {
  title: 'The last change before Stillroom stopped was not finished.',
  detail:
    'A change is shown as saved once it is whole on the disk, and this one was not whole. Only where the power went too ' +
    'can a disk drop what it had taken. Check that the last thing you entered is there, and enter it again if not.',
};
