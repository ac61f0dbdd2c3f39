import fc from 'fast-check';
import { changedConsequences, type ChangedFigure } from '@core/formulas/change/changed-consequences';
import type { Consequences } from '@core/formulas/change/consequences';
import { describe, expect, it } from 'vitest';

const NOTHING: Consequences = {
  ...{ requiredHlb: null, offeredHlb: null, equivalents: { acid: 0, base: 0 } },
  ...{ cost: { perKgMinor: 0, coveredPpm: 0 }, label: [], findings: [], exposure: new Map() },
  ...{ naturalOrigin: null, oilPhasePercent: 0, heatingKwhPerKg: null },
  ...{ solidsPercent: { low: 0, high: 0 }, electrolytePercent: { low: 0, high: 0 } },
};
const EUROS = { region: 'en-GB', currency: 'EUR' } as const;
const changed = (before: Partial<Consequences>, after: Partial<Consequences>, wording = EUROS) =>
  changedConsequences({ ...NOTHING, ...before }, { ...NOTHING, ...after }, wording);
/** Without the hard spaces, which are not what is held here. */
const plain = ({ label, before, after, change }: ChangedFigure): string[] =>
  [label, before, after, change].map((one) => one.replaceAll('\u00a0', ' '));
const told = (...of: Parameters<typeof changed>): string[][] => changed(...of).figures.map(plain);

describe('what a change costs', () => {
  const cost = (perKgMinor: number, coveredPpm = 1_000_000) => ({ cost: { perKgMinor, coveredPpm } });

  it('is told with what it is more or less, in per cent', () => {
    // 1,250 to 1,000 is a fifth less; 800 to 900 an eighth more.
    expect(told(cost(1250), cost(1000))).toEqual([['Raw materials per kg', '€12.50', '€10.00', '−20 %']]);
    expect(told(cost(800), cost(900))).toEqual([['Raw materials per kg', '€8.00', '€9.00', '+12.5 %']]);
  });

  it('is not compared where not the same share has a price, and says how much has', () => {
    expect(told(cost(1250), cost(1000, 820_000))).toEqual([
      ['Raw materials per kg', '€12.50', '€10.00 for the 82.00 % with a price', ''],
    ]);
    expect(told(cost(0, 0), cost(1000))).toEqual([['Raw materials per kg', 'no prices', '€10.00', '']]);
  });

  it('is no “+0 %” where the cent that it is more is far less than a tenth of a per cent', () => {
    expect(told(cost(1_234_567), cost(1_234_568))).toEqual([
      ['Raw materials per kg', '€12,345.67', '€12,345.68', ''],
    ]);
  });

  it('is written as the region writes it', () => {
    const [figure] = changedConsequences(
      { ...NOTHING, ...cost(1250) },
      { ...NOTHING, ...cost(100_000) },
      { region: 'de-DE', currency: 'EUR' },
    ).figures;
    expect(plain(figure!).slice(1)).toEqual(['12,50 €', '1.000,00 €', '+7.900 %']);
  });
});

describe('figures before and after', () => {
  it('are those that differ as they are shown, and by how much', () => {
    expect(
      told(
        { requiredHlb: 11.2, offeredHlb: 11, oilPhasePercent: 20, heatingKwhPerKg: 0.05 },
        { requiredHlb: 10.9, offeredHlb: 11.04, oilPhasePercent: 24.25, heatingKwhPerKg: 0.0512 },
      ),
    ).toEqual([
      ['Required HLB', '11.2', '10.9', '−0.3'],
      // 11 and 11.04 are both shown as 11.
      ['Oil phase', '20 %', '24.25 %', '+4.25'],
      ['Heating', '50 Wh/kg', '51.2 Wh/kg', '+1.2'],
    ]);
  });

  it('that come to be known, or known no longer, have no difference', () => {
    expect(told({ requiredHlb: 7 }, { offeredHlb: 9 })).toEqual([
      ['Required HLB', '7', 'not known', ''],
      ['Offered HLB', 'not known', '9', ''],
    ]);
  });

  it('acid and base are in mmol in 100 g', () => {
    expect(told({ equivalents: { acid: 5, base: 4 } }, { equivalents: { acid: 5.5, base: 0 } })).toEqual([
      ['Acid', '5 mmol in 100 g', '5.5 mmol in 100 g', '+0.5'],
      ['Base', '4 mmol in 100 g', '0 mmol in 100 g', '−4'],
    ]);
  });

  it('with two ends are told by both, and compared only where each has one', () => {
    expect(
      told(
        {
          solidsPercent: { low: 40, high: 60 },
          electrolytePercent: { low: 0.5, high: 0.5 },
          naturalOrigin: { low: 90, high: 95 },
        },
        { solidsPercent: { low: 40, high: 40 }, electrolytePercent: { low: 0.75, high: 0.75 } },
      ),
    ).toEqual([
      ['Solids', '40 to 60 %', '40 %', ''],
      ['Electrolyte', '0.5 %', '0.75 %', '+0.25'],
      ['Natural origin, with water', '90 to 95 %', 'not known', ''],
    ]);
  });

  it('never show a difference of nothing, and turned round differ by the same the other way', () => {
    const figure = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(figure, figure, (one, other) => {
        const there = told({ requiredHlb: one }, { requiredHlb: other });
        const back = told({ requiredHlb: other }, { requiredHlb: one });
        expect(back.length).toBe(there.length);
        for (const [at, [, before, after, change]] of there.entries()) {
          expect([back[at]?.[1], back[at]?.[2]]).toEqual([after, before]);
          expect(change).not.toMatch(/^[+−]0$/);
          const turned = (change ?? '').replace(/^[+−]/, (sign) => (sign === '+' ? '−' : '+'));
          expect(back[at]?.[3]).toBe(turned);
        }
      }),
    );
  });
});

describe('exposure before and after', () => {
  const exposure = (of: Record<string, [dose: number, margin: number | null]>) => ({
    exposure: new Map(Object.entries(of).map(([name, [dose, margin]]) => [name, { dose, margin }])),
  });

  it('is told of each substance with a margin, which is rounded down: 99.6 does not reach 100', () => {
    expect(
      told(
        exposure({ Phenoxyethanol: [0.0269, 372.6], Climbazole: [0.5, 8.99] }),
        exposure({ Phenoxyethanol: [0.10065, 99.6], Climbazole: [0.5, 8.99] }),
      ),
    ).toEqual([
      [
        'Exposure to Phenoxyethanol',
        '0.0269 mg/kg per day, margin 372',
        '0.101 mg/kg per day, margin 99',
        // 0.10065 / 0.0269 − 1 = 2.7416
        '+274.2 %',
      ],
    ]);
  });

  it('of what comes or goes is from none or to none', () => {
    expect(told(exposure({}), exposure({ Triclosan: [0.0000025, 12] }))).toEqual([
      ['Exposure to Triclosan', 'none', '0.0000025 mg/kg per day, margin 12', ''],
    ]);
    expect(told(exposure({ Triclosan: [0.1, 120] }), exposure({}))[0]?.slice(2)).toEqual(['none', '']);
  });

  it('of those without a point of departure is counted: how many are more, how many less', () => {
    const before = exposure({ Glycerin: [1, null], Squalane: [2, null], Parfum: [3, null], Aqua: [4, null] });
    const after = exposure({ Glycerin: [2, null], Squalane: [1, null], Aqua: [4, null], Urea: [1, null] });
    expect(told(before, after)).toEqual([
      [
        'Exposure to substances without a recorded point of departure',
        '',
        'higher for 2, lower for 2 of them',
        '',
      ],
    ]);
    expect(told(before, before)).toEqual([]);
  });
});

describe('findings and the label', () => {
  const finding = (ruleId: string, title: string, severity: 'warn' | 'note' = 'warn') =>
    ({ ruleId, title, severity }) as Consequences['findings'][number];

  it('are new, or gone, by what they say: one that says another thing is both', () => {
    const { findings } = changed(
      { findings: [finding('total', 'It makes 99 %.'), finding('water', 'No preservative.')] },
      { findings: [finding('water', 'No preservative.'), finding('total', 'It makes 98 %.', 'note')] },
    );
    expect(findings).toEqual([
      { kind: 'new', ruleId: 'total', severity: 'note', title: 'It makes 98 %.' },
      { kind: 'gone', ruleId: 'total', severity: 'warn', title: 'It makes 99 %.' },
    ]);
  });

  it('the label is told where its order turns, not where nothing does', () => {
    expect(changed({ label: ['Aqua', 'Urea'] }, { label: ['Aqua', 'Urea'] }).label).toBeNull();
    expect(changed({ label: ['Aqua', 'Urea'] }, { label: ['Urea', 'Aqua'] }).label).toEqual({
      before: ['Aqua', 'Urea'],
      after: ['Urea', 'Aqua'],
    });
  });
});
