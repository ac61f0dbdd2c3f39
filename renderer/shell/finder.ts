import { fold, foldedWords } from '@core/quantities/fold';
import type { ShelfAnswer } from '@core/shelf/query';
import { ref, watch, type Ref } from 'vue';
import type { RouteLocationRaw } from 'vue-router';
import { answer, service } from '../service/client';

/** Something that the palette found, and where it is. */
export interface Finding {
  key: string;
  says: string;
  what: string;
  to: RouteLocationRaw;
  keys?: string;
}

const PLACES: Finding[] = [
  { key: 'today', says: 'Today', what: 'place', to: '/', keys: 'Alt 1' },
  { key: 'materials', says: 'Raw materials', what: 'place', to: '/materials', keys: 'Alt 2' },
  { key: 'bench', says: 'Emulsion bench', what: 'place', to: '/bench', keys: 'Alt 3' },
  { key: 'formulas', says: 'Formulas', what: 'place', to: '/formulas', keys: 'Alt 4' },
  { key: 'batches', says: 'Batches', what: 'place', to: '/batches', keys: 'Alt 5' },
  {
    key: 'add',
    says: 'Add a raw material',
    what: 'command',
    to: { path: '/materials', query: { do: 'add' } },
  },
  {
    key: 'start',
    says: 'Start a formula',
    what: 'command',
    to: { path: '/formulas', query: { do: 'start' } },
  },
  { key: 'plan', says: 'Plan a batch', what: 'command', to: { path: '/batches', query: { plan: 'new' } } },
  {
    key: 'back up',
    says: 'Back up now',
    what: 'command',
    to: { path: '/library', query: { do: 'back-up' } },
  },
  { key: 'settings', says: 'Settings', what: 'place', to: '/settings' },
  { key: 'library', says: 'Library and backups', what: 'place', to: '/library' },
];
const MOST_OF_A_KIND = 8;

/** Whether every word typed begins a word of the text, case and accents aside. */
export function beginsWords(text: string, typed: string): boolean {
  const words = foldedWords(text);
  return foldedWords(typed).every((part) => words.some((word) => word.startsWith(part)));
}

async function formulasFound(typed: string): Promise<Finding[]> {
  const all = await answer(service.formulas.$get());
  return all
    .filter((f) => beginsWords(`${f.name} ${f.code}`, typed))
    .slice(0, MOST_OF_A_KIND)
    .map((f) => ({
      key: f.id,
      says: f.name,
      what: `formula ${f.code}`,
      to: { name: 'formula', params: { id: f.id } },
    }));
}

async function batchesFound(typed: string): Promise<Finding[]> {
  const all = await answer(service.batches.$get({ query: {} }));
  return all
    .filter((b) => beginsWords(`${b.number} ${b.formulaName}`, typed))
    .slice(0, MOST_OF_A_KIND)
    .map((b) => ({
      key: b.id,
      says: b.number,
      what: `batch of ${b.formulaName}`,
      to: { name: 'batch', params: { id: b.id } },
    }));
}

async function materialsFound(typed: string): Promise<Finding[]> {
  const params = new URLSearchParams({ text: typed, limit: String(MOST_OF_A_KIND) });
  const found = await answer<ShelfAnswer>(fetch(`/api/materials?${params}`));
  return found.rows.map((row) => ({
    key: row.id,
    says: row.tradeName,
    what: row.inci,
    to: { name: 'material', params: { id: row.id } },
  }));
}

/**
 * What the typed text finds, while the palette is open. An answer that comes late is dropped; `settled` waits for the
 * one to what is typed now.
 */
export function useFinder(text: Ref<string>, isOpen: () => boolean) {
  const findings = ref<Finding[]>(PLACES);
  let latest = 0;
  let underWay: Promise<void> = Promise.resolve();

  async function find(): Promise<void> {
    latest += 1;
    const mine = latest;
    const typed = fold(text.value).trim();
    if (typed === '' || !isOpen()) {
      findings.value = PLACES;
      return;
    }
    const found = await Promise.all([materialsFound(typed), formulasFound(typed), batchesFound(typed)]).catch(
      () => [],
    );
    if (mine === latest)
      findings.value = [...PLACES.filter((place) => beginsWords(place.says, typed)), ...found.flat()];
  }
  watch([text, isOpen], () => (underWay = find()), { flush: 'sync' });
  return { findings, settled: () => underWay };
}
