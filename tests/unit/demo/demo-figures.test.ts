import { describe, expect, it } from 'vitest';
import type { FigureKind } from '@core/materials/figure';
import type { Material } from '@core/materials/material';
import { formulaByCode, library, usedIn, type UsedMaterial } from './demo-shelf';
import {
  eacnRecords,
  findByName,
  hlbRecords,
  limitRecords,
  MEMORY,
  printed,
  requiredHlbRecords,
  type Printed,
} from './published-values';

const inciOf = ({ composition }: Material) => composition.map(({ inci }) => inci).join(' (and) ');

/** Everything that the reference tables print for one figure of a material; `spans`: their widest ends too. */
function allPrinted(material: Material, kind: FigureKind, spans = false): Printed[] {
  const inci = inciOf(material);
  if (kind === 'hlb') {
    const record = findByName(hlbRecords, inci);
    if (!record) return [];
    const range = spans && record.range ? printed(record.range.join('-'), record) : [];
    return [record, ...(record.alternatives ?? [])]
      .flatMap((entry) => printed(entry.hlb, entry))
      .concat(range);
  }
  if (kind === 'eacn') {
    const record = eacnRecords.find(({ oil }) => oil.startsWith(inci));
    if (!record) return [];
    return [
      ...printed(record.eacn, record),
      ...(spans && record.range ? printed(record.range.join('-'), record) : []),
    ];
  }
  const record = findByName(requiredHlbRecords, inci);
  const side = kind === 'requiredHlbOw' ? 'ow' : 'wo';
  return (record?.byList ?? []).flatMap((entry) => printed(entry[side], entry));
}

const KINDS = ['hlb', 'requiredHlbOw', 'requiredHlbWo', 'eacn'] as const;
const cited = library.materials.flatMap((material) =>
  KINDS.flatMap((kind) => {
    const figure = material.figures[kind];
    return figure?.provenance === 'published' ? [{ code: material.code, kind, material, figure }] : [];
  }),
);

describe('figures that cite a published source', () => {
  it('are many', () => expect(cited.length).toBeGreaterThan(50));

  it.each(cited)('$code $kind stands in the list that it cites', ({ material, kind, figure }) => {
    const fromMemory = figure.source.endsWith(MEMORY);
    const source = fromMemory ? figure.source.slice(0, -MEMORY.length) : figure.source;
    const value = figure.value ?? Number.NaN;
    const found = allPrinted(material, kind).find(
      (entry) => entry.source === source && entry.low <= value && value <= entry.high,
    );
    expect(found, `${value}, ${source}`).toBeDefined();
    expect(found?.fromMemory).toBe(fromMemory);
  });

  it.each(cited)('$code $kind spans no more than the lists do', ({ material, kind, figure }) => {
    const lists = allPrinted(material, kind, true);
    expect(figure.low ?? figure.value).toBeGreaterThanOrEqual(Math.min(...lists.map(({ low }) => low)));
    expect(figure.high ?? figure.value).toBeLessThanOrEqual(Math.max(...lists.map(({ high }) => high)));
  });
});

describe('what the shelf does not know', () => {
  it('some oils have no required HLB, and some emulsifiers no HLB, as on a real shelf', () => {
    const { materials } = library;
    expect(materials.some(({ code, figures }) => code.startsWith('O-') && !figures.requiredHlbOw)).toBe(true);
    expect(materials.some(({ functions, figures }) => functions.includes('emulsifier') && !figures.hlb)).toBe(
      true,
    );
  });
});

// Relative atomic masses, abridged (IUPAC, from memory).
const WEIGHTS: Record<string, number> = {
  H: 1.008,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  Na: 22.99,
  Mg: 24.305,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  K: 39.098,
};

function molarMass(formula: string): number {
  return [...formula.matchAll(/([A-Z][a-z]?)(\d*)/g)].reduce(
    (sum, [, element, count]) => sum + (WEIGHTS[element ?? ''] ?? Number.NaN) * Number(count || 1),
    0,
  );
}

describe('molar masses', () => {
  const byCode = new Map(library.materials.map((material) => [material.code, material]));
  it.each([
    ['A-301', 'C18H36O2'],
    ['R-103', 'C7H5NaO2'],
    ['R-104', 'C6H7KO2'],
    ['R-301', 'C10H18N2Na2O10'],
    ['C-101', 'C6H10O8'],
    ['C-102', 'C3H6O3'],
    ['C-103', 'H3PO4'],
    ['C-201', 'NaOH'],
    ['C-202', 'NaOH'],
    ['C-203', 'KOH'],
    ['C-204', 'C6H15NO3'],
    ['C-205', 'C4H11NO3'],
    ['C-206', 'C4H11NO'],
    ['C-301', 'MgSO11H14'],
    ['C-302', 'NaCl'],
  ])('%s follows from the atoms of %s', (code, formula) => {
    expect(byCode.get(code)?.figures.molarMass?.value).toBeCloseTo(molarMass(formula), 1);
  });

  it('every molar mass on the shelf is checked above', () => {
    const known = library.materials.filter(({ figures }) => figures.molarMass);
    expect(known).toHaveLength(15);
  });
});

describe('legal limits', () => {
  const limited = library.materials.flatMap(({ code, legalLimit }) => {
    const [, annex, entry] = legalLimit?.source.match(/Annex (III|V|VI)\/(\w+)/) ?? [];
    return legalLimit && annex && entry ? [{ code, legalLimit, annex, entry }] : [];
  });

  it('most can be traced to an entry', () => expect(limited.length).toBeGreaterThanOrEqual(9));

  it.each(limited)('$code states a figure of entry $annex/$entry', ({ legalLimit, annex, entry }) => {
    const record = limitRecords.find((one) => one.annex === annex && one.entry.split(' / ')[0] === entry);
    const figures = typeof record?.limit === 'number' ? [record.limit] : Object.values(record?.limit ?? {});
    expect(figures).toContain(legalLimit.ppm / 10_000);
    expect(legalLimit.source.includes(MEMORY)).toBe(record?.retrieved === 'memory');
  });
});

/** HLB as the reference tables print it, not as the shelf does. The pair of N-113 is the mean of its halves. */
function publishedHlb(material: Material): number | undefined {
  const values = material.composition.map(({ inci }) => findByName(hlbRecords, inci)?.hlb);
  const known = values.filter((value) => value !== undefined);
  return known.length === values.length
    ? known.reduce((sum, value) => sum + value, 0) / known.length
    : undefined;
}

function weightedMean(parts: { ppm: number; value: number }[]): number {
  const mass = parts.reduce((sum, { ppm }) => sum + ppm, 0);
  return parts.reduce((sum, { ppm, value }) => sum + ppm * value, 0) / mass;
}

function withValue(used: UsedMaterial[], valueOf: (material: Material) => number | null | undefined) {
  return used.flatMap(({ material, ppm }) => {
    const value = valueOf(material);
    return typeof value === 'number' ? [{ ppm, value }] : [];
  });
}

describe('required against offered HLB', () => {
  // The mass-weighted mean of both sides (Griffin 1949), from the reference tables. Published figures disagree
  // by 1 to 2 units, so that a pair within 1 unit is as near as they allow.
  it.each([
    ['F-001', 10.7, 10.6],
    ['F-002', 10.9, 10.8],
    ['F-003', 10.3, 11.3],
    ['F-008', 9.5, 9.5],
    ['F-011', 7.7, 7.7],
  ])('%s: the oils ask for about %d, the non-ionic emulsifiers offer about %d', (code, asked, offered) => {
    const used = usedIn(formulaByCode(code));
    const isEmulsifier = ({ functions }: Material) =>
      functions.includes('emulsifier') || functions.includes('co-emulsifier');
    const oils = used.filter(({ material }) => material.phaseOfUse === 'oil' && !isEmulsifier(material));
    const required = weightedMean(withValue(oils, (oil) => findByName(requiredHlbRecords, inciOf(oil))?.ow));
    const emulsifiers = used.filter(
      ({ material }) => isEmulsifier(material) && material.charge === 'non-ionic',
    );
    const given = weightedMean(withValue(emulsifiers, publishedHlb));
    expect(withValue(oils, (oil) => findByName(requiredHlbRecords, inciOf(oil))?.ow)).toHaveLength(
      oils.length,
    );
    expect(withValue(emulsifiers, publishedHlb)).toHaveLength(emulsifiers.length);
    expect(required).toBeCloseTo(asked, 0);
    expect(given).toBeCloseTo(offered, 0);
    expect(Math.abs(given - required)).toBeLessThanOrEqual(1);
  });

  it('F-005: the w/o pair is within 1 unit of what its oils ask for', () => {
    const used = usedIn(formulaByCode('F-005'));
    const required = weightedMean(withValue(used, (one) => findByName(requiredHlbRecords, inciOf(one))?.wo));
    const given = weightedMean(
      withValue(used, (one) => (one.functions.includes('emulsifier') ? publishedHlb(one) : null)),
    );
    expect(Math.abs(given - required)).toBeLessThanOrEqual(1);
  });
});
