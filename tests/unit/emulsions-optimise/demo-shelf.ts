import { demoLibrary } from '@core/demo/demo-library';
import { isEmulsifier } from '@core/emulsions/conflicts/recognise';
import { candidateFrom, type ShelfCandidate } from '@core/emulsions/optimise/candidates';
import type { Candidate } from '@core/emulsions/optimise/demand';
import type { Material } from '@core/materials/material';
import type { Currency } from '@core/quantities/money';

/** The emulsifiers of some materials as candidates: archived ones are left out. */
export function candidatesFrom(materials: readonly Material[], currency: Currency): ShelfCandidate[] {
  return materials
    .filter((material) => isEmulsifier(material) && material.status !== 'archived')
    .map((material) => candidateFrom(material, currency));
}

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
