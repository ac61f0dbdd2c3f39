import type { ExchangedRecord, LibraryDocument } from '../exchange/document';
import type { InciPart } from '../materials/composition';
import { tradeNameKey } from '../materials/nested';
import { needsOf } from '../merging/needs';
import { recordKey } from '../merging/choice';

/** The keys of the chosen records and of all that these use: materials of formulas, materials within materials. */
export function withWhatTheyUse(
  { records, versions, states }: Pick<LibraryDocument, 'records' | 'versions' | 'states'>,
  chosen: readonly string[],
): Set<string> {
  const byKey = new Map(records.map((record) => [recordKey(record.kind, record.id), record]));
  const byName = new Map<string, string | null>();
  for (const { kind, id, content } of records) {
    if (kind !== 'material') continue;
    const name = tradeNameKey(String(content.tradeName));
    byName.set(name, byName.has(name) ? null : recordKey(kind, id));
  }
  const frozen = new Map(states.map(({ hash, record }) => [hash, recordKey('material', record)]));
  const within = ({ kind, id, content }: ExchangedRecord): string[] => {
    if (kind === 'material')
      return (content.composition as InciPart[]).flatMap(({ inci }) => byName.get(tradeNameKey(inci)) ?? []);
    const recorded = versions
      .filter(({ formulaId }) => formulaId === id)
      .flatMap(({ materials }) => materials.flatMap(({ state }) => frozen.get(state) ?? []));
    return [...needsOf(kind, content), ...recorded];
  };
  const taken = new Set<string>();
  const wanted = [...chosen];
  for (let key = wanted.pop(); key !== undefined; key = wanted.pop()) {
    const record = byKey.get(key);
    if (!record || taken.has(key)) continue;
    taken.add(key);
    wanted.push(...within(record));
  }
  return taken;
}
