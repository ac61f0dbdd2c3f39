import { batchLines } from '@core/batches/plan-batch';
import type { Batch } from '@core/batches/batch';
import type { FormulaContent, FormulaVersion } from '@core/formulas/formula';
import type { VersionDecision } from '@core/formulas/decision';
import { formulaShares } from '@core/formulas/shares';
import type { Hazard } from '@core/materials/vocabulary';
import { HAZARDS } from '@core/materials/vocabulary';
import { batchSheet } from '@core/sheets/batch-sheet';
import { DATA_SHEETS, FIRST_AID, formulaCautions, HAZARD_CAUTIONS, NOT_PROOF } from '@core/sheets/cautions';
import { decisionFacts, withdrawnCaution } from '@core/sheets/decision-words';
import { formulaSheet } from '@core/sheets/formula-sheet';
import { stepPhases } from '@core/sheets/procedure';
import { targetFacts } from '@core/sheets/target-words';
import { blankTarget } from '@core/formulas/formula';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AT, idOf, MATERIALS, sampleMaterial, WATER } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch, sampleLine, sampleStep } from './samples';
import { factOf, rowsUnder, wordsOf } from './sheet-words';

const full = { forSharing: false, tradeNames: true };
const printed = (content: FormulaContent = CREAM, version: FormulaVersion | null = CREAM_VERSION) => ({
  content,
  materials: MATERIALS,
  version,
});
const formulaWords = (content?: FormulaContent, options = full) =>
  wordsOf(formulaSheet(printed(content), options, MAKER, AT));

describe('the lines of a formula sheet', () => {
  const sheet = formulaSheet(printed(), full, MAKER, AT);

  it('stand in their phases, in order, each with its share, and come to 100 % by hand', () => {
    // Water 100 − (4 + 0.25 + 5 + 1.5 + 12 + 4 + 2 + 0.5 + 1 + 0.3 + 0.125) = 69.325; phases 73.575, 25, 1.425.
    const words = wordsOf(sheet).join(' | ');
    expect(words).toContain('A   Water phase · 75 °C | 73.575 %');
    expect(words).toContain('B   Oil phase · 75 °C | 25.000 %');
    expect(words).toContain('C   Cool-down phase · 40 °C | 1.425 %');
    expect(words).toContain('Total | 100.000 %');
    const [first] = sheet.content.flatMap((node) => rowsUnder([node], 'Raw material', '% w/w'));
    expect(first?.[0]).toBe('Purified water (q.s. to 100)');
    expect(first?.at(-1)).toBe('69.325');
  });

  it('holds every line of the formula once', () => {
    const lines = CREAM.phases.flatMap((phase) => phase.lines);
    const words = wordsOf(sheet);
    for (const line of lines) {
      const name = MATERIALS[line.materialId]?.tradeName ?? '';
      const shown = line.toHundred ? `${name} (q.s. to 100)` : name;
      expect(
        words.filter((one) => one === shown),
        name,
      ).toHaveLength(1);
    }
  });

  it('shows each share in the decimals that the finest needs, so that none is rounded away', () => {
    const fine = structuredClone(CREAM);
    fine.phases[2]!.lines[0]!.ppm = 9_999;
    const words = formulaWords(fine);
    expect(words).toContain('0.9999');
    expect(words).toContain('69.3251');
  });

  it('says by how much lines fall short of or pass 100 %', () => {
    const without = {
      ...CREAM,
      phases: CREAM.phases.map((phase) => ({
        ...phase,
        lines: phase.lines.filter((line) => !line.toHundred),
      })),
    };
    expect(formulaWords(without)).toContain('Total – 69.325 % short of 100 %');
    const over = structuredClone(without);
    over.phases[0]!.lines[0]!.ppm += 800_000;
    expect(formulaWords(over)).toContain('Total – 10.675 % beyond 100 %');
  });

  it('names a line whose material has left the library, with its share', () => {
    const lost = structuredClone(CREAM);
    lost.phases[1]!.lines[0]!.materialId = idOf(99);
    const words = formulaWords(lost);
    expect(words).toContain('Material no longer in the library');
    expect(words).toContain('5.000');
  });

  it('letters a phase without a title, and prints none of its heat where none is set', () => {
    const plain = structuredClone(CREAM);
    plain.phases[1] = { ...plain.phases[1]!, title: '', temperatureC: null };
    expect(formulaWords(plain)).toContain('B   Phase B');
  });
});

describe('the procedure', () => {
  it('names the phases of a step by their letters in the order of the formula, whatever the order in the step', () => {
    const [a, b, c] = CREAM.phases.map((phase) => phase.id);
    expect(stepPhases(CREAM, sampleStep([c!, a!], ''))).toBe('A, C');
    expect(stepPhases(CREAM, sampleStep([b!, idOf(77)], ''))).toBe('B');
    expect(stepPhases(CREAM, sampleStep([], ''))).toBe('');
  });

  it('prints each figure of a step as it was written: a quarter of a minute is no third', () => {
    const step = sampleStep([], 'Homogenise.', { minutes: 0.25, temperatureC: 62.75, speedRpm: 3500 });
    const rows = rowsUnder(
      formulaSheet(printed({ ...CREAM, steps: [step] }), full, MAKER, AT).content,
      'Step',
      'What to do',
    );
    expect(rows).toEqual([['1', '', 'Homogenise.', '62.75', '3,500', '0.25']]);
    const bench = batchSheet(
      sampleBatch(),
      { ...CREAM_VERSION, content: { ...CREAM, steps: [step] } },
      MAKER,
      AT,
    );
    expect(rowsUnder(bench.content, 'Step', '°C, actual')).toEqual([
      ['1', '', 'Homogenise.', '62.75', '', '3,500', '', '0.25', '', ''],
    ]);
  });

  it('keeps what to look for and the caution beside their step', () => {
    const rows = rowsUnder(formulaSheet(printed(), full, MAKER, AT).content, 'Step', 'What to do');
    expect(rows).toHaveLength(CREAM.steps.length);
    expect(rows[0]?.[2]).toBe(
      'Wet the gum with the glycerol, add the water with stirring and heat.\nLook for: no lumps\n▲ Caution: Gum dust: weigh without draughts.',
    );
    expect(rows[3]?.slice(0, 2)).toEqual(['4', '']);
  });
});

describe('the target specification', () => {
  const of = (part: Partial<FormulaContent['target']>) =>
    Object.fromEntries(
      targetFacts({ ...blankTarget(), ...part }, 'en-GB').map(({ label, value }) => [label, value]),
    );

  it('says nothing of what nobody set', () => {
    expect(Object.values(of({})).every((value) => value === '')).toBe(true);
    expect(formulaWords({ ...CREAM, target: blankTarget() })).not.toContain('Target specification');
  });

  it('writes both ends in the same decimals, one end as at least or at most, and equal ends once', () => {
    expect(of({ phLow: 5, phHigh: 5.85 }).pH).toBe('5.00–5.85');
    expect(of({ phLow: 5 }).pH).toBe('at least 5');
    expect(of({ phHigh: 6.5 }).pH).toBe('at most 6.5');
    expect(of({ phLow: 5.5, phHigh: 5.5 }).pH).toBe('5.5');
    expect(of({ densityLow: 0, densityHigh: 1 }).Density).toBe('0–1\u00a0g/mL');
    expect(of({ viscosityLow: 18_000, viscosityMethod: 'spindle 6' }).Viscosity).toBe(
      'at least 18,000\u00a0mPa·s; spindle 6',
    );
    expect(of({ viscosityMethod: 'spindle 6' }).Viscosity).toBe('spindle 6');
  });
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

describe('the batch record', () => {
  const planned = (part: Partial<Batch>): Batch => {
    const batch = { ...sampleBatch(), ...part };
    const { totalMg, lines } = batchLines(CREAM, batch);
    return { ...batch, totalMg, lines };
  };
  const weighed = (batch: Batch) =>
    batchSheet(batch, CREAM_VERSION, MAKER, AT).content.flatMap((node) =>
      rowsUnder([node], 'Raw material', 'Lot'),
    );
  const targets = (batch: Batch) => weighed(batch).map((row) => Number(row[2]?.replaceAll(',', '')));

  it('has a target for each line by its share, in the steps of the balance, that come to the whole', () => {
    // 2.5 kg and 2 % more is 2,550 g: by hand 69.325 % is 1,767.79 g, 12 % is 306 g, 0.125 % is 3.19 g.
    const batch = planned({});
    const rows = weighed(batch);
    expect(rows).toHaveLength(12);
    expect(rows[0]?.[2]).toMatch(/^1,767\.[78]$/);
    expect(rows.find((row) => row[0]?.startsWith('Sweet almond oil'))?.[2]).toBe('306.0');
    const sum = targets(batch).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(2550, 6);
    expect(wordsOf(batchSheet(batch, CREAM_VERSION, MAKER, AT)).join('|')).toContain(
      'Total of all targets|2,550.0 g',
    );
  });

  it('adds up exactly for any size and any balance', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50_000, max: 90_000_000 }),
        fc.constantFrom(1, 10, 100, 1000),
        (massMg, readabilityMg) => {
          const batch = planned({ size: { by: 'mass', massMg }, readabilityMg });
          const sum = targets(batch).reduce((a, b) => a + b, 0);
          expect(sum * 1000).toBeCloseTo(
            batch.lines.reduce((mg, line) => mg + line.targetMg, 0),
            3,
          );
          const words = wordsOf(batchSheet(batch, CREAM_VERSION, MAKER, AT)).join('|');
          const total = /Total of all targets\|([\d.,]+) g/.exec(words)?.[1]?.replaceAll(',', '');
          expect(Number(total)).toBeCloseTo(sum, 6);
        },
      ),
      { numRuns: 12 },
    );
  });

  it('speaks of kilograms from 100 kg on, everywhere on it, and of grams below', () => {
    const big = wordsOf(
      batchSheet(
        planned({ size: { by: 'mass', massMg: 100_000_000 }, overagePpm: 0 }),
        CREAM_VERSION,
        MAKER,
        AT,
      ),
    );
    expect(big).toContain('Target, kg');
    expect(big).toContain('Tare, kg');
    const small = wordsOf(
      batchSheet(
        planned({ size: { by: 'mass', massMg: 99_900_000 }, overagePpm: 0 }),
        CREAM_VERSION,
        MAKER,
        AT,
      ),
    );
    expect(small).toContain('Target, g');
  });

  it('tells the size as it was asked for, and the overage to its last digit', () => {
    const of = (part: Partial<Batch>, label: string) =>
      factOf(batchSheet(planned(part), CREAM_VERSION, MAKER, AT), label);
    expect(of({}, 'Size asked for')).toBe('2.5\u00a0kg');
    expect(of({ size: { by: 'units', units: 48, fillMg: 50_000 } }, 'Size asked for')).toBe('48 × 50\u00a0g');
    expect(of({ overagePpm: 20_000 }, 'Overage')).toBe('2\u00a0%');
    expect(of({ overagePpm: 25_000 }, 'Overage')).toBe('2.50\u00a0%');
    expect(of({ overagePpm: 1_250 }, 'Overage')).toBe('0.125\u00a0%');
    expect(of({ overagePpm: 0 }, 'Overage')).toBe('0\u00a0%');
  });

  it('has a hazard or the lack of one beside each material that is weighed', () => {
    for (const [name] of weighed(planned({}))) expect(name).toMatch(/no hazards recorded|▲ /);
    expect(weighed(planned({})).find(([name]) => name?.startsWith('Citric acid'))?.[0]).toContain(
      '▲ irritant',
    );
  });

  it('has a row to write in for each limit that is set, one spare, and four where nothing is', () => {
    const checks = (target: FormulaContent['target']) =>
      rowsUnder(
        batchSheet(sampleBatch(), { ...CREAM_VERSION, content: { ...CREAM, target } }, MAKER, AT).content,
        'Check',
        'Specification',
      );
    expect(checks(CREAM.target).map(([label]) => label)).toEqual([
      'Appearance',
      'Odour',
      'Colour',
      'pH',
      'Viscosity',
      'Density',
      'Microbiology',
      '',
    ]);
    expect(checks(blankTarget())).toHaveLength(4);
  });

  it('leaves the procedure out where there is none, and never the sign-off', () => {
    const words = wordsOf(
      batchSheet(sampleBatch(), { ...CREAM_VERSION, content: { ...CREAM, steps: [] } }, MAKER, AT),
    );
    expect(words).not.toContain('Procedure');
    for (const role of ['Made by', 'Checked by', 'Released by', 'Sign-off and release'])
      expect(words).toContain(role);
  });

  it('is planned by shares that come to the whole formula', () => {
    const shares = [...formulaShares(CREAM).byLine.values()];
    expect(shares.reduce((a, b) => a + b, 0)).toBe(1_000_000);
  });
});
