import type { ExchangedRecord, LibraryDocument } from '../exchange/document';
import type { InciPart } from '../materials/composition';
import { isItsOwnSubstance, tradeNameKey, type Composed } from '../materials/nested';
import { needsOf } from '../merging/needs';
import { recordKey } from '../merging/choice';

type Held = Pick<LibraryDocument, 'records' | 'versions' | 'states'>;

/**
 * The materials that parts of compositions mean, by trade name: where exactly one goes by it, and neither a substance of
 * the library nor that material's own composition does. "Glycerin" in a blend is no sale of the maker's own glycerin.
 */
function materialsByName(records: readonly ExchangedRecord[]): Map<string, string | null> {
  const byName = new Map<string, string | null>();
  for (const { kind, id, content } of records) {
    if (kind !== 'material') continue;
    const one = content as unknown as Composed;
    const name = tradeNameKey(one.tradeName);
    byName.set(name, byName.has(name) || isItsOwnSubstance(one) ? null : recordKey(kind, id));
  }
  for (const { kind, content } of records)
    if (kind === 'substance') byName.set(tradeNameKey(String(content.name)), null);
  return byName;
}

/** The keys of the chosen records and of all that these use: materials of formulas, materials within materials. */
export function withWhatTheyUse({ records, versions, states }: Held, chosen: readonly string[]): Set<string> {
  const byKey = new Map(records.map((record) => [recordKey(record.kind, record.id), record]));
  const byName = materialsByName(records);
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
