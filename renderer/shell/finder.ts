import type { Found } from '@core/lists/found';
import { LONGEST_TEXT } from '@core/lists/query';
import { foldedWords } from '@core/quantities/fold';
import { ref, watch, type Ref } from 'vue';
import { useRoute } from 'vue-router';
import { answer, service, type InferResponseType } from '../service/client';
import { beginsWords } from './begins-words';
import type { Finding } from './finding';
import { commandsOf, FIRST_PLACES, placesFor } from './places';
import { recordPlace } from './record-place';

/** A record as the finder shows it. */
export function findingOf({ kind, row, putAside }: Found): Finding {
  const aside = putAside ? ', archived' : '';
  switch (kind) {
    case 'materials':
      return {
        key: row.id,
        says: row.tradeName,
        what: `${[row.code, row.inci].filter(Boolean).join(' · ')}${aside}${row.withdrawnOn && ', withdrawn'}`,
        to: recordPlace('material', row.id),
      };
    case 'formulas':
      return {
        key: row.id,
        says: row.name,
        what: `formula ${row.code}${aside}`,
        to: recordPlace('formula', row.id),
      };
    case 'batches':
      return {
        key: row.id,
        says: row.number,
        what: `batch of ${row.formulaName}`,
        to: recordPlace('batch', row.id),
      };
    case 'trials':
      return {
        key: row.id,
        says: row.title,
        what: 'trial series',
        to: recordPlace('trial series', row.id),
      };
    case 'substances':
      return {
        key: row.id,
        says: row.name,
        what: ['substance', row.colourIndex, row.usName].filter(Boolean).join(' · '),
        to: recordPlace('substance', row.id),
      };
    case 'limits':
      return {
        key: row.id,
        says: row.subject,
        what: `limit, ${row.regions.join(', ')} · ${row.source}`,
        to: recordPlace('limit', row.id),
      };
  }
}

/** The records of all nouns that a text means, nearest first. */
export function findRecords(
  text: string,
  kinds: Found['kind'][] = [],
  signal?: AbortSignal,
): Promise<Found[]> {
  const params = new URLSearchParams({ text: text.slice(0, LONGEST_TEXT) });
  for (const kind of kinds) params.append('kinds', kind);
  return answer<Found[]>(fetch(`/api/find?${params}`, { signal }));
}

type SavedSearch = InferResponseType<typeof service.searches.$get, 200>[number];

function searchesFor(typed: string, kept: readonly SavedSearch[]): Finding[] {
  return kept
    .filter(({ name }) => beginsWords(name, typed))
    .map(({ id, name, query }) => ({ key: id, says: name, what: 'saved search', to: `/materials?${query}` }));
}

/** Words of the glossary that are called what was typed; the glossary comes with the first search. */
async function wordsFor(typed: string): Promise<Finding[]> {
  const { termsFor } = await import('@core/glossary/glossary');
  return termsFor(typed)
    .filter(({ term, also = [] }) => [term, ...also].some((name) => beginsWords(name, typed)))
    .map(({ key, term }) => ({
      key: `word ${key}`,
      says: term,
      what: 'word of the trade',
      to: { path: '/help', query: { tool: 'glossary', term: key } },
    }));
}

/** Records that are what was typed come before the places; those that only mention it come after. */
function inOrder(records: Found[], places: Finding[], searches: Finding[], words: Finding[]): Finding[] {
  const meant = records.filter(({ near, putAside }) => (near === 'code' || near === 'name') && !putAside);
  const others = records.filter((found) => !meant.includes(found));
  return [...meant.map(findingOf), ...places, ...searches, ...words, ...others.map(findingOf)];
}

/**
 * What the typed text finds, while the palette is open. An answer that comes late is dropped; `settled` waits for the
 * one to what is typed now.
 */
export function useFinder(text: Ref<string>, isOpen: () => boolean) {
  const route = useRoute();
  const here = () => commandsOf(String(route.name ?? ''), String(route.params.id ?? ''));
  const findings = ref<readonly Finding[]>(FIRST_PLACES);
  let latest = 0;
  let underWay: Promise<void> = Promise.resolve();
  /** The saved searches are few: they are fetched once each time the palette opens. */
  let kept: Promise<SavedSearch[]> = Promise.resolve([]);

  async function find(): Promise<void> {
    latest += 1;
    const mine = latest;
    const typed = text.value;
    if (foldedWords(typed).length === 0 || !isOpen()) {
      findings.value = FIRST_PLACES;
      return;
    }
    const [records, searches, words] = await Promise.all([
      findRecords(typed).catch((): Found[] => []),
      kept,
      wordsFor(typed),
    ]);
    if (mine === latest)
      findings.value = inOrder(records, placesFor(typed, here()), searchesFor(typed, searches), words);
  }
  watch(isOpen, (open) => {
    if (open) kept = answer(service.searches.$get()).catch(() => []);
  });
  watch([text, isOpen], () => (underWay = find()), { flush: 'sync' });
  return { findings, settled: () => underWay };
}
