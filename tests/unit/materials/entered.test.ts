import { blankMaterial, materialContent } from '@core/materials/material';
import { CHARGES, FORMS, FUNCTIONS, HAZARDS, KEEP_FROM, ORIGINS, STATUSES } from '@core/materials/vocabulary';
import { withdrawalWords } from '@core/materials/withdrawal';
import { endingOf, isPast, titleOfFile, type MaterialDocument } from '@core/materials/document';
import { describe, expect, it } from 'vitest';

const plain = blankMaterial('Brackwater Glycerin', 'Glycerin');

/** What is said of a plain material with one thing entered; empty where it is taken. */
function said(entered: Record<string, unknown>): string {
  const { error } = materialContent.safeParse({ ...plain, ...entered });
  return (error?.issues ?? []).map(({ message }) => message).join(' | ');
}
const part = (inci: string, lowPpm: number, highPpm = lowPpm) => ({ inci, lowPpm, highPpm });
const offer = (entered: Record<string, unknown> = {}) => ({
  offers: [
    {
      ...{
        supplier: 'Haus Zwei',
        itemCode: '',
        packMg: 1_000_000,
        priceMinor: 1_160,
        currency: 'EUR',
        date: '2026-03-31',
      },
      ...entered,
    },
  ],
});
const usage = (minPpm: number | null, typicalPpm: number | null, maxPpm: number | null) => ({
  usage: { minPpm, typicalPpm, maxPpm, provenance: 'supplier', source: '' },
});

describe('a composition that is entered', () => {
  it.each([
    ['nothing', [], /needs at least one INCI name/],
    ['a name twice', [part('Aqua', 500_000), part('AQUA', 500_000)], /listed twice\. Keep it once/],
    ['more than the whole', [part('Aqua', 600_000), part('Urea', 500_000)], /add up to more than 100 %/],
    ['crossed ends', [part('Aqua', 600_000, 500_000)], /lower end of the range is above the upper end/],
    ['a name of nothing', [part(' ', 1_000_000)], /Give the INCI name/],
    ['a share above the whole', [part('Aqua', 0, 1_000_001)], /./],
    ['a share below zero', [part('Aqua', -1, 5)], /./],
    ['a part of a ppm', [part('Aqua', 0.5, 1)], /./],
    [
      'sixty-one names',
      Array.from({ length: 61 }, (_, n) => part(`Substance ${n}`, 0)),
      /60 INCI names at most/,
    ],
  ] as const)('of %s is refused', (_, composition, says) => expect(said({ composition })).toMatch(says));

  it.each([
    ['ranges that overlap', [part('Aqua', 600_000, 900_000), part('Urea', 100_000, 400_000)]],
    ['less than the whole', [part('Aqua', 500_000)]],
    ['a trace of one ppm', [part('Aqua', 999_999), part('Urea', 1)]],
    ['nothing to all', [part('Aqua', 0, 1_000_000)]],
    ['names of any script', [part('水', 500_000), part('Öl', 500_000)]],
  ] as const)('of %s is taken', (_, composition) => expect(said({ composition })).toBe(''));
});

describe('an offer that is entered', () => {
  it.each([
    ['no supplier', { supplier: '' }, /Give the supplier/],
    ['a pack of nothing', { packMg: 0 }, /The pack must weigh something/],
    ['half a milligram', { packMg: 0.5 }, /weighed to the milligram/],
    ['more than a tanker', { packMg: 2e12 }, /larger than a tanker/],
    ['a price below zero', { priceMinor: -1 }, /cannot be negative/],
    ['half a cent', { priceMinor: 11.5 }, /more decimals than its currency/],
    ['a price without its pack', { packMg: null }, /needs the size of its pack/],
    ['a day that is none', { date: '2026-02-30' }, /year-month-day/],
    ['a day as it is said', { date: '31.03.2026' }, /year-month-day/],
  ] as const)('with %s is refused', (_, entered, says) => expect(said(offer(entered))).toMatch(says));

  it.each([
    ['no price yet', { priceMinor: null }],
    ['neither pack nor price', { packMg: null, priceMinor: null }],
    ['something for nothing', { priceMinor: 0 }],
  ] as const)('with %s is taken', (_, entered) => expect(said(offer(entered))).toBe(''));
});

describe('usage, storage and words that are entered', () => {
  it.each([
    [usage(20_000, 10_000, null), /must rise from lowest to typical to highest/],
    [usage(20_000, null, 10_000), /must rise/],
    [usage(null, 20_000, 10_000), /must rise/],
    [usage(-1, null, null), /./],
    [usage(null, null, 1_000_001), /./],
    [{ storage: { ...plain.storage, minC: -81 } }, /Too cold to be true/],
    [{ storage: { ...plain.storage, maxC: 201 } }, /Too hot to be true/],
    [{ storage: { ...plain.storage, shelfLifeMonths: 601 } }, /Fifty years at most/],
    [{ storage: { ...plain.storage, afterOpeningMonths: -1 } }, /cannot be negative/],
    [{ charge: 'positive' }, /./],
    [{ form: 'prills' }, /./],
    [{ functions: ['wetting'] }, /./],
    [{ withdrawnOn: '2026-13-01' }, /./],
    [
      { figures: { hlb: { low: null, value: null, high: null, provenance: 'supplier', source: '' } } },
      /HLB: enter a value, or remove it/,
    ],
    [
      { figures: { hlb: { low: null, value: 41, high: null, provenance: 'supplier', source: '' } } },
      /HLB must lie between 0 and 40/,
    ],
    [
      { figures: { pKa: { low: 5, value: 4, high: null, provenance: 'supplier', source: '' } } },
      /lower end must not be above/,
    ],
    [
      { figures: { hlb: { low: null, value: 12, high: null, provenance: 'guess', source: '' } } },
      /Say where the figure comes from/,
    ],
    [
      { figures: { hlb: { low: null, value: '12', high: null, provenance: 'supplier', source: '' } } },
      /Write this as a number/,
    ],
  ])('%j is refused', (entered, says) => expect(said(entered)).toMatch(says));

  it.each([
    usage(0, 0, 0),
    usage(10_000, 10_000, 10_000),
    usage(null, null, null),
    usage(null, null, 1_000_000),
    { storage: { ...plain.storage, minC: -80, maxC: 200 } },
    { storage: { ...plain.storage, shelfLifeMonths: 0 } },
    { functions: [...FUNCTIONS] },
    { hazards: [...HAZARDS] },
    ...CHARGES.map((charge) => ({ charge })),
    ...FORMS.map((form) => ({ form })),
    ...ORIGINS.map((origin) => ({ origin })),
    ...STATUSES.map((status) => ({ status })),
    { storage: { ...plain.storage, keepFrom: [...KEEP_FROM] } },
  ])('%j is taken', (entered) => expect(said(entered)).toBe(''));
});

describe('a withdrawn material', () => {
  const one = {
    id: 'a',
    tradeName: 'Brackwater Clay',
    withdrawnOn: '2026-07-31',
    withdrawnWhy: 'asbestos found.',
  };

  it.each([
    ['2026-07-30', /is to be withdrawn from .*: asbestos found\. Use it before that day only\.$/],
    ['2026-07-31', /is withdrawn from .*: asbestos found\. Do not use it\.$/],
    ['2027-01-01', /is withdrawn from .* Do not use it\.$/],
  ])('is told on %s', (today, says) => expect(withdrawalWords(one, today, 'en-GB')).toMatch(says));

  it('without a reason is told without one', () => {
    expect(withdrawalWords({ ...one, withdrawnWhy: '' }, '2026-08-01', 'en-GB')).not.toContain(':');
  });
});

describe('a paper on file', () => {
  const paper = (entered: Partial<MaterialDocument> = {}): MaterialDocument => ({
    ...{ title: 'Data sheet', sha256: 'a'.repeat(64), mediaType: 'application/pdf', bytes: 1 },
    ...{ kind: 'safety data sheet', dated: '2025-01-01', validUntil: '2026-01-01' },
    ...entered,
  });

  it.each([
    ['2025-12-31', false],
    ['2026-01-01', false],
    ['2026-01-02', true],
  ])('on %s is past: %s', (day, past) => expect(isPast(paper(), [paper()], day)).toBe(past));

  it('gives way to a newer one of its kind, a certificate to none', () => {
    const newer = paper({ dated: '2025-06-01', validUntil: '' });
    expect(isPast(paper(), [paper(), newer], '2026-06-01')).toBe(false);
    const certificate = paper({ kind: 'certificate' });
    expect(isPast(certificate, [certificate, { ...newer, kind: 'certificate' }], '2026-06-01')).toBe(true);
  });

  it.each([
    [{ mediaType: 'application/pdf', title: 'Sheet' }, 'pdf'],
    [{ mediaType: 'image/jpeg', title: 'photo.png' }, 'jpg'],
    [{ mediaType: 'application/octet-stream', title: 'spectrum.JDX' }, 'jdx'],
    [{ mediaType: 'application/octet-stream', title: 'no ending' }, 'bin'],
    [{ mediaType: 'application/octet-stream', title: 'odd.name with spaces' }, 'bin'],
  ] as const)('%j ends in %s', (file, ending) => expect(endingOf(file)).toBe(ending));

  it.each([
    ['Sheet.pdf', 'application/pdf', 'Sheet'],
    ['a.b.PDF', 'application/pdf', 'a.b'],
    ['spectrum.jdx', 'application/octet-stream', 'spectrum.jdx'],
    ['  name  ', 'application/pdf', 'name'],
  ] as const)('“%s” of %s is called “%s”', (name, type, title) =>
    expect(titleOfFile(name, type)).toBe(title),
  );
});
