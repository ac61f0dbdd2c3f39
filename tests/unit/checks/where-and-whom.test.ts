import { describe, expect, it } from 'vitest';
import { checkFormula } from '@core/checks/all';
import type { Finding } from '@core/checks/check';
import { blankMarket, type Market } from '@core/products/market';
import { blankTarget } from '@core/formulas/formula';
import { EXAMPLES } from '../limits/law';
import { content, figure, findingsOf, make, phase, type Row } from './build';
import * as shelf from './materials';

const on = (market: Partial<Market>) => ({ market: { ...blankMarket(), ...market } });
const scent = make('Scent', 'Parfum', {
  functions: ['fragrance'],
  allergens: [{ inci: 'Linalool', ppm: 1 }],
});

describe('where it goes, and whom it is for', () => {
  const powder = make('Dust', 'Silica', { form: 'powder', solubleIn: ['insoluble'] });
  it.each<[string, Row, Partial<Market>, string, Partial<Market>]>([
    ['fragrance near the eyes', [scent, 0.2], { kind: 'eye make-up' }, 'warn', { kind: 'face cream' }],
    ['retinol on lips', [make('A', 'Retinol'), 0.1], { sites: ['lips'] }, 'warn', { sites: ['face'] }],
    ['powder in a spray', [powder, 2], { dispenser: 'pump spray' }, 'warn', {}],
    [
      'menthol for infants',
      [make('M', 'Menthol'), 0.1],
      { users: ['children under 3 years'] },
      'stop',
      { users: ['adults'] },
    ],
    [
      'retinyl palmitate in pregnancy',
      [make('A', 'Retinyl Palmitate'), 0.1],
      { users: ['pregnancy'] },
      'warn',
      {},
    ],
    [
      'fragrance in the intimate area',
      [scent, 0.2],
      { sites: ['intimate area'] },
      'warn',
      { sites: ['body'] },
    ],
  ])('%s', (_name, row, market, severity, elsewhere) => {
    expect(findingsOf('user-and-site', [row], on(market))[0]?.severity).toBe(severity);
    expect(findingsOf('user-and-site', [row], on(elsewhere))).toEqual([]);
  });
  it('speaks of an acid in pregnancy from 0.5 % on', () => {
    const acid = make('S', 'Salicylic Acid');
    expect(findingsOf('user-and-site', [[acid, 0.5]], on({ users: ['pregnancy'] }))).toHaveLength(1);
    expect(findingsOf('user-and-site', [[acid, 0.4]], on({ users: ['pregnancy'] }))).toEqual([]);
  });
});

describe('words of the law', () => {
  const lawful = (rows: Row[], market: Partial<Market>): Finding[] =>
    checkFormula({
      content: content([phase(rows)], on(market)),
      materials: new Map(rows.map(([one]) => [one.id, one])),
      law: EXAMPLES,
      onDay: '2026-11-28',
    });
  it('names what the label must carry, with the lines that ask for it', () => {
    const filter = make('B3', 'Benzophenone-3', { functions: ['uv filter'] });
    const said = (percent: number) =>
      lawful([[filter, percent]], { kind: 'face cream' }).filter(({ ruleId }) => ruleId === 'label-notices');
    expect(said(1)[0]?.title).toContain('Contains Benzophenone-3');
    expect(said(1)[0]?.lines).toHaveLength(1);
    expect(said(0.4)).toEqual([]);
  });
  it('names nanomaterials where the European law holds', () => {
    const zinc = make('N', 'Zinc Oxide (nano)', { functions: ['uv filter'] });
    expect(findingsOf('nano', [[zinc, 5]], on({ regions: ['EU'] }))[0]?.severity).toBe('note');
    expect(
      findingsOf('nano', [[zinc, 5]], on({ regions: ['EU'], dispenser: 'pump spray' }))[0]?.severity,
    ).toBe('warn');
    expect(findingsOf('nano', [[zinc, 5]], on({ regions: ['US'] }))).toEqual([]);
    expect(findingsOf('nano', [[make('Z', 'Zinc Oxide'), 5]])).toEqual([]);
  });
  it('names substances classed as harmful to reproduction; one classed as a powder only where it may be breathed in', () => {
    expect(findingsOf('classified', [[make('B', 'Boric Acid'), 1]])[0]?.severity).toBe('warn');
    expect(findingsOf('classified', [[make('S', 'Salicylic Acid'), 1]])[0]?.severity).toBe('note');
    // Nothing is classed so since the class of titanium dioxide was annulled; a maker may class a substance so.
    const [first] = EXAMPLES.substances;
    const own = { ...first!, name: 'Invented Dust', cmrClass: '2, as a powder breathed in' as const };
    const dust = make('D', 'Invented Dust');
    const said = (market: Partial<Market>, one = dust) =>
      checkFormula({
        content: content([phase([[one, 5]])], on(market)),
        materials: new Map([[one.id, one]]),
        law: { ...EXAMPLES, substances: [...EXAMPLES.substances, own] },
        onDay: '2026-11-28',
      }).filter(({ ruleId }) => ruleId === 'classified');
    expect(said({})).toEqual([]);
    expect(said({ kind: 'face powder' })).toHaveLength(1);
    expect(said({ kind: 'face powder' }, make('W', 'CI 77891'))).toEqual([]);
    expect(findingsOf('classified', [[make('E', 'Ethylhexyl Salicylate'), 5]])).toEqual([]);
  });
});

describe('sanitising', () => {
  const spirit = make('Spirit', 'Alcohol Denat.');
  it('is no cosmetic by its words, and hardly kills below 60 % ethanol by volume', () => {
    const said = (purpose: string, percent: number) =>
      findingsOf(
        'sanitising',
        [
          [spirit, percent],
          [shelf.water(), 100 - percent],
        ],
        { purpose },
      );
    expect(said('a hand sanitiser', 70)).toHaveLength(1);
    // By hand: 50 g / 0.789 = 63.4 mL beside 50 mL is 56 %.
    expect(
      said('a hand sanitiser', 50)
        .map(({ title }) => title)
        .join(),
    ).toContain('56 %');
    expect(said('a hand gel', 50)).toEqual([]);
  });
});

describe('materials withdrawn, and papers past their day', () => {
  const at = (rows: Row[], onDay: string, ruleId: string) =>
    checkFormula({
      content: content([phase(rows)]),
      materials: new Map(rows.map(([one]) => [one.id, one])),
      onDay,
    })
      .filter((one) => one.ruleId === ruleId)
      .map(({ severity, title, advice }) => [severity, title, advice]);

  it('stops a line whose material was withdrawn, from that day on, with why', () => {
    const recalled = make('Lichwort', 'Panthenol', {
      withdrawnOn: '2026-07-01',
      withdrawnWhy: 'Recalled by its maker',
    });
    expect(at([[recalled, 1]], '2026-06-30', 'withdrawn-material')).toEqual([
      [
        'note',
        'To be withdrawn: Lichwort',
        'Put another material in its place before that day. Lichwort from 2026-07-01: Recalled by its maker.',
      ],
    ]);
    expect(at([[recalled, 1]], '2026-07-01', 'withdrawn-material')[0]?.slice(0, 2)).toEqual([
      'stop',
      'Withdrawn: Lichwort',
    ]);
    expect(at([[shelf.water(), 100]], '2026-07-01', 'withdrawn-material')).toEqual([]);
  });

  const paper = (kind: 'specification' | 'certificate', dated: string, validUntil: string) => ({
    ...{ kind, dated, validUntil, title: `${kind} of ${dated}` },
    ...{ sha256: 'a'.repeat(64), mediaType: 'application/pdf' as const, bytes: 1 },
  });
  it('warns of a specification expired, notes a certificate, and tells what ends soon', () => {
    const filed = make('Filed', 'Betaine', {
      documents: [
        paper('specification', '2024-01-01', '2026-05-31'),
        paper('certificate', '2025-01-01', '2026-08-31'),
      ],
    });
    expect(at([[filed, 1]], '2026-05-31', 'papers').map(([severity]) => severity)).toEqual(['note']);
    expect(at([[filed, 1]], '2026-06-01', 'papers').map(([severity, title]) => [severity, title])).toEqual([
      ['warn', 'Expired document: Filed: specification of 2024-01-01 (until 2026-05-31)'],
    ]);
    // 60 days before 31 August is 2 July.
    expect(at([[filed, 1]], '2026-07-01', 'papers')).toHaveLength(1);
    expect(at([[filed, 1]], '2026-07-02', 'papers').map(([severity]) => severity)).toEqual(['warn', 'note']);
    expect(at([[filed, 1]], '2026-09-01', 'papers').map(([severity]) => severity)).toEqual(['warn', 'note']);
  });
  it('asks for no paper whose place a newer one has taken, and for none without a last day', () => {
    const documents = [
      paper('specification', '2024-01-01', '2026-05-31'),
      paper('specification', '2026-05-01', ''),
    ];
    expect(at([[make('Renewed', 'Betaine', { documents }), 1]], '2026-11-28', 'papers')).toEqual([]);
  });
});

describe('what can be had', () => {
  it('names trial materials, those without a supplier, and prices of long ago', () => {
    const offer = {
      supplier: 'A',
      itemCode: '',
      packMg: 1,
      priceMinor: 1,
      currency: 'EUR' as const,
      date: '2023-01-01',
    };
    const rows: Row[] = [
      [make('Trial', 'Panthenol', { status: 'on trial', offers: [{ ...offer, date: '2026-01-01' }] }), 1],
      [make('Nobody', 'Squalane'), 1],
      [make('Old', 'Betaine', { offers: [offer] }), 1],
      [shelf.water(), 97],
    ];
    const found = checkFormula({
      content: content([phase(rows)]),
      materials: new Map(rows.map(([one]) => [one.id, one])),
      onDay: '2026-11-28',
    }).filter(({ ruleId }) => ruleId === 'supply');
    expect(found.map(({ title }) => title)).toEqual([
      'On trial: Trial',
      'No supplier recorded: Nobody',
      'No price of the last 2 years: Old',
    ]);
  });
});

describe('alkali and solubility', () => {
  const lye = make('Lye', 'Sodium Hydroxide', { functions: ['base'] });
  it('more strong alkali than all acids take up burns', () => {
    const stearic = { ...shelf.stearicAcid(), figures: { acidValue: figure(206) } };
    // By hand: 1 g of NaOH is 25 mmol; 3 g of stearic acid take up 11 mmol, 7 g 25.7 mmol.
    expect(
      findingsOf('too-much-base', [
        [lye, 1],
        [stearic, 3],
      ])[0]?.title,
    ).toMatch(/^14 mmol/);
    expect(
      findingsOf('too-much-base', [
        [lye, 1],
        [stearic, 7],
      ]),
    ).toEqual([]);
    const meant = { target: { ...blankTarget(), phLow: 12, phHigh: 12.5 } };
    expect(
      findingsOf(
        'too-much-base',
        [
          [lye, 1],
          [stearic, 3],
        ],
        meant,
      ),
    ).toEqual([]);
    expect(
      findingsOf('too-much-base', [
        [lye, 1],
        [make('Acid', 'Something Acid', { functions: ['acid'] }), 1],
      ]),
    ).toEqual([]);
  });

  const caffeine = make('Wake', 'Caffeine', { functions: ['active'] });
  const oil = make('Oil', 'Caprylic/Capric Triglyceride', {
    functions: ['emollient'],
    phaseOfUse: 'oil',
    form: 'liquid',
  });
  it('caffeine is unlike an oil and like water; limonene the other way round', () => {
    const limonene = make('Peel', 'Limonene', { functions: ['fragrance'] });
    const inPhase = (row: Row, other: Row) => findingsOf('solubility', [row, other]);
    expect(inPhase([caffeine, 1], [oil, 20])[0]?.title).toContain('oil phase');
    expect(inPhase([caffeine, 1], [shelf.water(), 80])).toEqual([]);
    expect(inPhase([limonene, 1], [shelf.water(), 80])[0]?.title).toContain('water phase');
    expect(inPhase([limonene, 1], [oil, 20])).toEqual([]);
  });
  it('is not asked of a trace, of a pigment, or where it is recorded to dissolve', () => {
    expect(
      findingsOf('solubility', [
        [caffeine, 0.1],
        [oil, 20],
      ]),
    ).toEqual([]);
    expect(
      findingsOf('solubility', [
        [{ ...caffeine, solubleIn: ['insoluble'] }, 1],
        [oil, 20],
      ]),
    ).toEqual([]);
    expect(
      findingsOf('solubility', [
        [{ ...caffeine, solubleIn: ['oil'] }, 1],
        [oil, 20],
      ]),
    ).toEqual([]);
  });
});
