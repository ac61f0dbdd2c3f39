import type { FormulaContent, FormulaVersion } from '@core/formulas/formula';
import type { VersionDecision } from '@core/formulas/decision';
import type { Hazard } from '@core/materials/vocabulary';
import { HAZARDS } from '@core/materials/vocabulary';
import { batchSheet } from '@core/sheets/batch-sheet';
import { DATA_SHEETS, FIRST_AID, formulaCautions, HAZARD_CAUTIONS, NOT_PROOF } from '@core/sheets/cautions';
import { decisionFacts, withdrawnCaution } from '@core/sheets/decision-words';
import { formulaSheet } from '@core/sheets/formula-sheet';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AT, idOf, MATERIALS, sampleMaterial, WATER } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch, sampleLine, sampleStep } from './samples';
import { wordsOf } from './sheet-words';

const full = { forSharing: false, tradeNames: true };
const printed = (content: FormulaContent = CREAM, version: FormulaVersion | null = CREAM_VERSION) => ({
  content,
  materials: MATERIALS,
  version,
});

describe('the cautions of a formula', () => {
  const hazardous = (name: string, hazards: Hazard[]) =>
    sampleMaterial(name, [['Squalane', 100]], { hazards });
  const cautionsOf = (materials: ReturnType<typeof hazardous>[], content: Partial<FormulaContent> = {}) =>
    formulaCautions(
      {
        ...CREAM,
        phases: [
          { id: idOf(1), title: '', temperatureC: null, lines: materials.map((one) => sampleLine(one, 1)) },
        ],
        steps: [],
        ...content,
      },
      Object.fromEntries(materials.map((one) => [one.id, one])),
    );

  it.each(HAZARDS)('%s: says what to do, with the materials that bring it', (hazard) => {
    const [told] = cautionsOf([
      hazardous('One', [hazard]),
      hazardous('Two', []),
      hazardous('Three', [hazard]),
    ]);
    const [head = '', rest = ''] = HAZARD_CAUTIONS[hazard].split(/:(.*)/s);
    expect(told).toBe(`${head} (One, Three):${rest}`);
  });

  it('always end with the data sheets and with what no sheet proves; first aid stands where a hazard does', () => {
    fc.assert(
      fc.property(fc.subarray([...HAZARDS]), (hazards) => {
        const said = cautionsOf([hazardous('One', hazards)]);
        expect(said.slice(-2)).toEqual([DATA_SHEETS, NOT_PROOF]);
        expect(said.includes(FIRST_AID)).toBe(hazards.length > 0);
        expect(said.filter((one) => one.includes('(One)'))).toHaveLength(hazards.length);
      }),
      { numRuns: 30 },
    );
  });

  it('print a name letter by letter, whatever signs it holds', () => {
    expect(cautionsOf([hazardous('Glow $& $1 $$', ['irritant'])])[0]).toContain('Irritant (Glow $& $1 $$):');
  });

  it('name a material once that stands on two lines, and count silent ones once', () => {
    const [one, silent] = [hazardous('One', ['caustic']), hazardous('Silent', [])];
    const said = cautionsOf([one, one, silent, silent]);
    expect(said[0]).toContain('(One)');
    expect(said).toContain(
      'For one material no hazard is recorded, which proves nothing: read the safety data sheet.',
    );
  });

  it('warn of scalding from 50 °C on, be it the phase or a step that is hot', () => {
    const scalds = (phaseC: number | null, stepC: number | null) =>
      cautionsOf([hazardous('One', ['irritant'])], {
        phases: [{ id: idOf(1), title: '', temperatureC: phaseC, lines: [] }],
        steps: [sampleStep([], 'Heat', { temperatureC: stepC })],
      }).some((one) => one.includes('scald'));
    expect([scalds(50, null), scalds(null, 50), scalds(49.9, 49), scalds(null, null)]).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it('say that a formula measures no sun protection, where there is a filter', () => {
    const filter = sampleMaterial('Filter', [['Octocrylene', 100]], { functions: ['uv filter'] });
    expect(cautionsOf([filter]).join()).toContain('never from a formula');
    expect(cautionsOf([WATER]).join()).not.toContain('UV');
  });
});

const decided = (...decisions: Partial<VersionDecision>[]): VersionDecision[] =>
  decisions.map((one) => ({
    decision: 'approved',
    by: 'E. Marlowe',
    on: '2026-03-01',
    reason: '',
    at: AT,
    ...one,
  }));
const WITHDRAWN = decided(
  {},
  {
    decision: 'withdrawn',
    by: 'R. Thorne',
    on: '2026-03-09',
    reason: 'Oakbarrow Supply changed Velmora VQ 7.',
  },
);

describe('what was decided on a version', () => {
  it('is said: approvals by name and day, a withdrawal with its reason and what not to do', () => {
    const version = { number: 3, decisions: WITHDRAWN };
    expect(decisionFacts(version, 'en-GB')).toEqual([{ label: 'Approved', value: 'E. Marlowe, 1 Mar 2026' }]);
    expect(withdrawnCaution(version, 'en-GB')).toEqual([
      'WITHDRAWN: version 3 by R. Thorne on 9 Mar 2026: Oakbarrow Supply changed Velmora VQ 7. Do not make it.',
    ]);
  });

  it('is nothing for a draft, a version that nobody decided on, or one that is approved', () => {
    for (const version of [
      null,
      { number: 1 },
      { number: 1, decisions: [] },
      { number: 1, decisions: decided({}) },
    ])
      expect(withdrawnCaution(version, 'en-GB')).toEqual([]);
    expect(decisionFacts(null, 'en-GB')).toEqual([]);
  });

  it('stands first on the batch record too, since a batch may have been planned before', () => {
    const words = wordsOf(batchSheet(sampleBatch(), { ...CREAM_VERSION, decisions: WITHDRAWN }, MAKER, AT));
    expect(words.find((one) => one.startsWith('– '))).toContain('WITHDRAWN');
  });

  it('is said of materials that were withdrawn since, with from when and why', () => {
    const recalled = { id: WATER.id, tradeName: 'Spring water', withdrawnWhy: 'Recalled, lots of May.' };
    const said = (withdrawnOn: string): string => {
      const withdrawn = [{ ...recalled, withdrawnOn }];
      return wordsOf(batchSheet(sampleBatch(), { ...CREAM_VERSION, withdrawn }, MAKER, AT)).join(' ');
    };
    expect(said('2026-03-14')).toContain(
      'Spring water is withdrawn from 14 Mar 2026: Recalled, lots of May. Do not use it.',
    );
    expect(said('2026-03-15')).toContain('Spring water is to be withdrawn from 15 Mar 2026: Recalled');
  });

  it('is shared without who decided and why: the reason names a supplier and a trade name', () => {
    const formula = { ...printed(), version: { ...CREAM_VERSION, decisions: WITHDRAWN } };
    const shared = wordsOf(formulaSheet(formula, { forSharing: true, tradeNames: false }, MAKER, AT)).join(
      ' ',
    );
    expect(shared).toContain('WITHDRAWN: version 3 on 9 Mar 2026. Do not make it.');
    for (const hidden of ['R. Thorne', 'Oakbarrow', 'Velmora', 'E. Marlowe'])
      expect(shared).not.toContain(hidden);
    expect(wordsOf(formulaSheet(formula, full, MAKER, AT)).join(' ')).toContain('Oakbarrow Supply changed');
  });
});
