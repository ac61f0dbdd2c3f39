import type { Worked } from '@core/working/working';
import { benchProcedure, procedureTable } from '@core/sheets/procedure';
import { phaseCaption, formulaTables, NO_MATERIAL } from '@core/sheets/formula-lines';
import { looksNode } from '@core/sheets/form-picture';
import { photoNode } from '@core/sheets/photo';
import { sourceNodes, stepNodes, workingNodes } from '@core/sheets/working-steps';
import { FORMS } from '@core/materials/vocabulary';
import type { FormulaContent, FormulaPhase } from '@core/formulas/formula';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idOf, MATERIALS, OIL, sampleMaterial, WATER } from './sample-materials';
import { CREAM, sampleLine, sampleStep } from './samples';
import { rowsUnder, textsOf } from './sheet-words';

const worked = (part: Partial<Worked> = {}): Worked => ({
  ...{ value: 7.5, unit: 'g', sources: [], cautions: [] },
  steps: [
    { says: 'half of the acid', shows: '15 / 2', result: 7.5, unit: 'g' },
    { says: 'of the whole at 10^-3', shows: '7.5 × 0.001', result: 0.0075, unit: '' },
  ],
  ...part,
});
const words = (nodes: Parameters<typeof rowsUnder>[0]): string[] => nodes.flatMap(textsOf);

describe('a working on paper', () => {
  it('numbers its steps, each with its formula, and a unit where there is one', () => {
    expect(words(stepNodes(worked(), 'en-GB'))).toEqual([
      ...['1. half of the acid', '15 / 2 = 7.5 g', '2. of the whole at 10⁻³', '7.5 × 0.001 = 0.0075'],
    ]);
  });

  it('is written with the comma where the region has one, in the formula as in the result', () => {
    expect(words(stepNodes(worked(), 'de-DE')).slice(2)).toEqual([
      ...['2. of the whole at 10⁻³', '7,5 × 0,001 = 0,0075'],
    ]);
  });

  it('says a caution once, and then its sources on one line, none twice', () => {
    const source = { text: 'Griffin 1954', basis: 'read' as const };
    const memory = { text: 'CRC Handbook', basis: 'memory' as const };
    const said = words(
      workingNodes(
        worked({ steps: [], cautions: ['Measure it.', 'Measure it.'], sources: [source, memory, source] }),
        'en-GB',
      ),
    );
    expect(said).toEqual(['Measure it.', 'Source: Griffin 1954; CRC Handbook (not verified)']);
  });

  it('without a source prints no empty line for one', () => {
    expect(sourceNodes(worked())).toEqual([]);
    expect(workingNodes(worked({ steps: [] }), 'en-GB')).toEqual([]);
  });

  it.each([
    ['common-practice', 'Trade habit', 'Source: Trade habit (common practice, no source)'],
    ['library', 'Wax X', 'Source: Wax X (as recorded in the library)'],
    ['user', 'pKa', 'Source: pKa (as entered)'],
    ['user', 'pKa entered by hand', 'Source: pKa entered by hand'],
    ['read', 'ISO 16128-2', 'Source: ISO 16128-2'],
  ] as const)('a source that is %s is told so, once: %s', (basis, text, says) => {
    expect(words(sourceNodes(worked({ sources: [{ text, basis }] })))).toEqual([says]);
  });
});

const [A, B] = [idOf(1), idOf(2)];
const phase = (id: string, part: Partial<FormulaPhase> = {}): FormulaPhase => ({
  ...{ id, title: '', temperatureC: null, lines: [] },
  ...part,
});
const content = (part: Partial<FormulaContent>): FormulaContent => ({ ...CREAM, ...part });

describe('the procedure, to read and to follow', () => {
  const full = sampleStep([A, B], 'Homogenise.', { temperatureC: 72.5, speedRpm: 3500, minutes: 0.5 });
  const made = content({ phases: [phase(A), phase(B)], steps: [full, sampleStep([], 'Cool.')] });

  it('has the same steps and targets on either', () => {
    const read = rowsUnder([procedureTable(made, 'en-GB', 490)], 'What to do', 'rpm');
    expect(read).toEqual([
      ['1', 'A, B', 'Homogenise.', '72.5', '3,500', '0.5'],
      ['2', '', 'Cool.', '', '', ''],
    ]);
    const bench = rowsUnder([benchProcedure(made, 'en-GB', 760)], 'What to do', 'rpm, target');
    expect(bench.map((row) => [0, 1, 2, 3, 5, 7].map((at) => row[at]))).toEqual(read);
  });

  it('leaves every place for what was done empty, also of a step without a target', () => {
    const bench = rowsUnder([benchProcedure(made, 'en-GB', 760)], '°C, actual');
    for (const row of bench) expect([4, 6, 8, 9].map((at) => row[at])).toEqual(['', '', '', '']);
    expect(bench).toHaveLength(2);
  });

  it('prints zero degrees and a negative as they are: a frozen step is no step without heat', () => {
    const cold = content({
      phases: [],
      steps: [
        sampleStep([], 'Chill.', { temperatureC: 0 }),
        sampleStep([], 'Freeze.', { temperatureC: -18 }),
      ],
    });
    const rows = rowsUnder([procedureTable(cold, 'en-GB', 490)], 'What to do');
    expect(rows.map((row) => row[3]?.replace('−', '-'))).toEqual(['0', '-18']);
  });

  it('marks a caution by a sign and the word, below what to do', () => {
    const step = sampleStep([], 'Add the lye.', { caution: 'It heats.', lookFor: 'clear' });
    expect(
      rowsUnder([procedureTable(content({ phases: [], steps: [step] }), 'en-GB', 490)], 'Step')[0]?.[2],
    ).toBe('Add the lye.\nLook for: clear\n▲ Caution: It heats.');
  });

  it('numbers its steps from one in their order, however many', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), (count) => {
        const steps = Array.from({ length: count }, (_, at) => sampleStep([], `do ${at}`));
        const rows = rowsUnder([procedureTable(content({ steps }), 'en-GB', 490)], 'Step');
        expect(rows.map(([number, , what]) => [number, what])).toEqual(
          steps.map(({ instruction }, at) => [String(at + 1), instruction]),
        );
      }),
      { numRuns: 15 },
    );
  });
});

describe('the head of a phase', () => {
  it.each<[Partial<FormulaPhase>, number, string]>([
    [{ title: 'Water phase', temperatureC: 75 }, 0, 'A   Water phase · 75 °C'],
    [{ title: 'Oil phase' }, 1, 'B   Oil phase'],
    [{ temperatureC: 40 }, 2, 'C   Phase C · 40 °C'],
    [{}, 0, 'A   Phase A'],
    [{ temperatureC: 0 }, 3, 'D   Phase D · 0 °C'],
    [{ temperatureC: 37.5 }, 0, 'A   Phase A · 37.5 °C'],
  ])('of %j at %i is “%s”', (part, at, says) => {
    expect(textsOf(phaseCaption(phase(A, part), at, 'en-GB', '12 %'))).toEqual([says, '12 %']);
  });
});

describe('the lines of a formula, shown in fewer or more columns', () => {
  const made = content({
    phases: [phase(A, { lines: [sampleLine(WATER, 'q.s.'), sampleLine(OIL, 12.5, 'last')] })],
  });
  const of = (shown: { tradeNames: boolean; supplier: boolean }) =>
    rowsUnder(formulaTables(made, MATERIALS, 'en-GB', 490, shown), '% w/w');

  it('by trade name with INCI, by INCI alone, and with who supplies it', () => {
    const named = of({ tradeNames: true, supplier: false });
    expect(named.map((row) => row.length)).toEqual([3, 3]);
    expect(named[0]?.[0]).toBe(`${WATER.tradeName} (q.s. to 100)`);
    expect(named[1]?.[0]).toBe(`${OIL.tradeName}\nlast`);
    const inci = of({ tradeNames: false, supplier: false });
    expect(inci.map((row) => row[0])).toEqual([
      'Aqua (q.s. to 100)',
      expect.not.stringContaining(OIL.tradeName),
    ]);
    expect(of({ tradeNames: true, supplier: true }).map((row) => row.length)).toEqual([4, 4]);
  });

  it('has the q.s. line at what the others leave: 100 − 12.5', () => {
    expect(of({ tradeNames: true, supplier: false }).map((row) => row.at(-1))).toEqual(['87.50', '12.50']);
  });

  it('says of a material that is gone that it is, in every column that it has', () => {
    const gone = formulaTables(made, {}, 'en-GB', 490, { tradeNames: true, supplier: true });
    expect(rowsUnder(gone, '% w/w').map((row) => row.slice(0, 3))).toEqual([
      [`${NO_MATERIAL} (q.s. to 100)`, '', ''],
      [`${NO_MATERIAL}\nlast`, '', ''],
    ]);
  });
});

describe('what a material looks like on paper', () => {
  const photo = { dataUrl: 'data:image/png;base64,AA==' };
  const flakes = sampleMaterial('Wax', [['Cera Alba', 100]], { form: 'flakes', appearance: '' });

  it('is its photo, told to who cannot see it by how it looks, else by its form, else by its name', () => {
    const alt = (part: object): unknown =>
      (photoNode(photo, { ...flakes, ...part }, 60, 40) as { alt?: string }).alt;
    expect(alt({ appearance: 'pale yellow' })).toBe('Photo of Wax: pale yellow');
    expect(alt({})).toBe('Photo of Wax: flakes');
    expect(alt({ form: null })).toBe('Photo of Wax');
  });

  it('that cannot be printed is said to be so, with why', () => {
    const node = photoNode({ cannotPrint: 'it is a WebP' }, flakes, 60, 40);
    expect(textsOf(node)).toEqual(['Photo cannot be printed: it is a WebP.']);
  });

  it('is nothing where neither photo nor form is known', () => {
    expect(looksNode(null, { ...flakes, form: null }, 60, 40)).toBeNull();
    expect(looksNode(undefined, { ...flakes, form: null }, 60, 40)).toBeNull();
  });

  it.each(FORMS)('drawn as %s fits its box, and is told in words', (form) => {
    const node = looksNode(null, { ...flakes, form }, 50, 30) as { svg: string; fit: number[]; alt: string };
    expect(node.fit[0]).toBeLessThanOrEqual(50);
    expect(node.fit[1]).toBeLessThanOrEqual(30);
    expect(node.alt).not.toBe('');
    // A copier has no colours: every fill is a grey or none.
    for (const [, red, green, blue] of node.svg.matchAll(/"#(..)(..)(..)"/g))
      expect([green, blue]).toEqual([red, red]);
  });
});
