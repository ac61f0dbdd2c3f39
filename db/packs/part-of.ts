import type { ExchangedRecord, LibraryDocument } from '@core/exchange/document';
import { recordKey } from '@core/merging/choice';
import { withWhatTheyUse } from '@core/packs/chosen';
import { WITHHELD_OF_MATERIALS, type PackRequest } from '@core/packs/pack';
import { MATERIAL_FIELDS } from '@core/materials/fields';
import type { Fields } from '@core/record/field';
import { strippedState } from './stripped';

function strippedRecord(record: ExchangedRecord, shownOf: ReadonlyMap<string, string>): ExchangedRecord {
  if (record.kind !== 'material') return record;
  const blanks = WITHHELD_OF_MATERIALS.map((key) => [key, (MATERIAL_FIELDS as Fields)[key]?.blank]);
  return {
    ...record,
    // Whoever has met a state, whole or as it is shown here, knows it again.
    past: record.past.flatMap((hash) => {
      const shown = shownOf.get(hash);
      return shown === undefined || shown === hash ? [hash] : [hash, shown];
    }),
    content: { ...record.content, ...(Object.fromEntries(blanks) as object) },
  };
}

const filesIn = (records: readonly unknown[]): Set<string> =>
  new Set(
    JSON.stringify(records)
      .match(/"[0-9a-f]{64}"/g)
      ?.map((sha) => sha.slice(1, -1)) ?? [],
  );

/** The chosen records of a library with all that they use, without what was not asked for. */
export function partOf(document: LibraryDocument, request: PackRequest): LibraryDocument {
  const { materials, formulas, withSuppliers, withBatches } = request;
  const chosen = [
    ...materials.map((id) => recordKey('material', id)),
    ...formulas.map((id) => recordKey('formula', id)),
  ];
  const taken = withWhatTheyUse(document, chosen);
  const versions = document.versions.filter(({ formulaId }) => taken.has(recordKey('formula', formulaId)));
  const stripped = new Map(
    document.states.map((state) => [state.hash, withSuppliers ? state : strippedState(state)]),
  );
  const shownOf = new Map([...stripped].map(([hash, { hash: shown }]) => [hash, shown]));
  const issues = document.issues.filter(({ kind, record }) => taken.has(recordKey(kind, record)));
  const frozen = new Set([
    ...versions.flatMap(({ formula, materials }) => [formula, ...materials.map(({ state }) => state)]),
    ...issues.map(({ state }) => state),
  ]);
  const shown = (hash: string): string => shownOf.get(hash) ?? hash;
  const records = document.records
    .filter(({ kind, id }) => taken.has(recordKey(kind, id)))
    .map((record) => (withSuppliers ? record : strippedRecord(record, shownOf)));
  const recorded = new Set(versions.map(({ id }) => id));
  const batches = withBatches ? document.batches.filter(({ versionId }) => recorded.has(versionId)) : [];
  const used = filesIn([...records.map(({ content }) => content), ...batches]);
  return {
    ...document,
    withheld: withSuppliers ? {} : { material: [...WITHHELD_OF_MATERIALS] },
    settings: null,
    records,
    history: [],
    states: [
      ...new Map(
        [...frozen].flatMap((hash) => stripped.get(hash) ?? []).map((state) => [state.hash, state]),
      ).values(),
    ],
    versions: versions.map((version) => ({
      ...version,
      formula: shown(version.formula),
      materials: version.materials.map(({ state, revision }) => ({ state: shown(state), revision })),
    })),
    batches,
    issues: issues.map((issue) => ({ ...issue, state: shown(issue.state) })),
    numbers: [],
    attachments: document.attachments.filter(({ sha256 }) => used.has(sha256)),
  };
}
