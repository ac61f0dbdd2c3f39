import { demoLibrary } from '@core/demo/demo-library';
import { candidatesFrom } from '@core/emulsions/optimise/candidates';
import type { Candidate } from '@core/emulsions/optimise/demand';

/** The demonstration library's emulsifiers as candidates, in the order in which the service reads them. */
export function demoShelf(): Candidate[] {
  const { materials, settings } = demoLibrary();
  const all = candidatesFrom(materials, settings.currency);
  return all.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

/** Those of a shelf by the first words of their names. */
export function named(shelf: readonly Candidate[], ...starts: string[]): Candidate[] {
  return shelf.filter((one) => starts.some((start) => one.name.startsWith(start)));
}
