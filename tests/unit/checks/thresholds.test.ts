import { namesOf, percentText, phaseTemperature, formulaFacts } from '@core/checks/facts';
import { checkFormula } from '@core/checks/all';
import { blankTarget, type FormulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { content, figure, findings, findingsOf, make, nextId, phase, range, type Row } from './build';
import * as shelf from './materials';

const said = (ruleId: string, ...asked: [Row[], Partial<FormulaContent>?]) =>
  findingsOf(ruleId, ...asked).map(({ severity, title }) => `${severity}: ${title}`);

describe('the total', () => {
  const water = shelf.water();
  it.each<[number[], string[]]>([
    [[70, 30], []],
    [[99.9999, 0.0001], []],
    [[70, 29.9999], ['stop: The lines come to 99.9999 %, 0.0001 % too little']],
    [[70, 30.0001], ['stop: The lines come to 100.0001 %, 0.0001 % too much']],
    [[0], ['stop: The lines come to 0 %, 100 % too little']],
    [[100, 100], ['stop: The lines come to 200 %, 100 % too much']],
  ])('of %j', (shares, findings_) => {
    expect(
      said(
        'total',
        shares.map((share): Row => [water, share]),
      ),
    ).toEqual(findings_);
  });

  it('a line q.s. takes what the others leave, and is asked for no less than nothing', () => {
    const with_ = (percent: number): string[] => {
      const one = phase([
        [water, percent],
        [water, 0],
      ]);
      one.lines[1]!.toHundred = true;
      return findings('total', content([one]), [water]).map(({ title }) => title);
    };
    expect(with_(70)).toEqual([]);
    expect(with_(100)).toEqual([]);
    expect(with_(100.5)).toEqual(['The other lines come to 100.5 %, so nothing is left for the q.s. line']);
  });

  it('is right only where the lines come to a million ppm, over any number of lines and phases', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 200_000 }), { minLength: 1, maxLength: 12 }),
        fc.nat(3),
        (ppms, at) => {
          const lines = ppms.map((ppm): Row => [water, ppm / 10_000]);
          const whole = content([phase(lines.slice(0, at)), phase(lines.slice(at))]);
          const sum = ppms.reduce((all, one) => all + one, 0);
          expect(findings('total', whole, [water])).toHaveLength(sum === 1_000_000 ? 0 : 1);
          const last = phase([[water, (1_000_000 - sum) / 10_000]]);
          if (sum < 1_000_000)
            expect(findings('total', { ...whole, phases: [...whole.phases, last] }, [water])).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('where a check begins to speak', () => {
  const salt = shelf.saltCrystals();
  it('salt beside carbomer: above 0.1 % together', () => {
    const at = (percent: number) =>
      said('electrolyte', [
        [shelf.carbomer(), 0.3],
        [salt, percent],
      ]);
    expect(at(0.1)).toEqual([]);
    expect(at(0.1001)[0]).toContain('0.1001 % of salt (Sea Crystals) may thin Jelly 40');
  });
  it('a small line: below 0.01 %', () => {
    const at = (percent: number) => said('small-lines', [[salt, percent]]);
    expect(at(0.01)).toEqual([]);
    expect(at(0.0099)).toEqual(['note: Less than 0.01 %: Sea Crystals']);
  });
  it('usage: at either end is within; above is a warning, below a note', () => {
    const used = make('Ester', 'Cetyl Palmitate', {
      usage: { minPpm: 10_000, typicalPpm: null, maxPpm: 50_000, provenance: 'supplier', source: '' },
    });
    expect(said('usage-range', [[used, 1]])).toEqual([]);
    expect(said('usage-range', [[used, 5]])).toEqual([]);
    expect(said('usage-range', [[used, 0.9999]])).toEqual([
      'note: Ester at 0.9999 % is below its lowest use of 1 %',
    ]);
    expect(said('usage-range', [[used, 5.0001]])).toEqual([
      'warn: Ester at 5.0001 % is above its highest use of 5 %',
    ]);
    expect(said('usage-range', [[used, 0]])).toEqual([]);
    expect(said('usage-range', [[{ ...used, usage: null }, 50]])).toEqual([]);
    expect(said('usage-range', [[{ ...used, usage: { ...used.usage!, minPpm: null } }, 0.1]])).toEqual([]);
  });
  it('w/o without salt: below half a per cent', () => {
    const rows = (percent: number): Row[] => [
      [shelf.water(), 70],
      [salt, percent],
    ];
    const wo = { productType: 'w/o emulsion' } as const;
    expect(said('water-in-oil-salt', rows(0.5), wo)).toEqual([]);
    expect(said('water-in-oil-salt', rows(0.49), wo)).toEqual(['note: A w/o emulsion with 0.49 % salt']);
    expect(said('water-in-oil-salt', [[shelf.water(), 70]], wo)).toEqual([
      'note: A w/o emulsion without salt',
    ]);
    expect(said('water-in-oil-salt', rows(0), { productType: 'o/w emulsion' })).toEqual([]);
  });
  it('storage: temperatures that only touch are one in common', () => {
    const keeps = (name: string, minC: number | null, maxC: number | null): Material =>
      make(name, 'Glycerin', { storage: { ...make('x', 'x').storage, minC, maxC } });
    const both = (one: Material, other: Material) =>
      said('storage-temperatures', [
        [one, 1],
        [other, 1],
      ]);
    expect(both(keeps('Warm', 25, null), keeps('Cold', null, 25))).toEqual([]);
    expect(both(keeps('Warm', 26, null), keeps('Cold', null, 25))).toEqual([
      'note: Warm keeps above 26 °C, Cold below 25 °C',
    ]);
    expect(both(keeps('Warm', null, null), keeps('Cold', null, -18))).toEqual([]);
  });
});

describe('heat', () => {
  const wax = make('Wax', 'Cetyl Alcohol', {
    consistency: 'waxy',
    form: 'flakes',
    phaseOfUse: 'oil',
    figures: { meltingPoint: range(49, 52) },
  });
  const at = (temperature: number | null, of: Material, ruleId: string) =>
    findings(ruleId, content([phase([[of, 3]], temperature)]), [of]);
  it('a wax melts at the upper end of its range, and a phase without heat is at room temperature', () => {
    expect(at(52, wax, 'unmelted')).toEqual([]);
    expect(at(51, wax, 'unmelted')[0]?.title).toBe('Wax melts at 52 °C; phase A is at 51 °C');
    expect(at(null, wax, 'unmelted')[0]?.title).toBe('Wax melts at 52 °C; phase A has no temperature');
    expect(at(null, { ...wax, figures: { meltingPoint: figure(24) } }, 'unmelted')).toEqual([]);
    expect(at(null, { ...wax, figures: {} }, 'unmelted')).toEqual([]);
    expect(at(20, { ...wax, coldProcessable: true }, 'unmelted')).toEqual([]);
    expect(at(20, { ...wax, solubleIn: ['water'] }, 'unmelted')).toEqual([]);
  });
  it('what stands 60 to 80 °C is safe at 60, and of an unknown one the place in the formula tells', () => {
    const of = (parts: Partial<Material>): Material => ({ ...make('Active', 'Panthenol'), ...parts });
    const ranged = of({ figures: { maxTemperature: range(60, 80) } });
    expect(at(60, ranged, 'heat-sensitive')).toEqual([]);
    expect(at(61, ranged, 'heat-sensitive')[0]?.title).toBe(
      'Active withstands 60 °C at most; phase A reaches 61 °C',
    );
    const late = of({ phaseOfUse: 'cool-down' });
    expect(at(45, late, 'heat-sensitive')).toEqual([]);
    expect(at(46, late, 'heat-sensitive')[0]?.advice).toContain('below about 45 °C');
    expect(
      at(46, of({ phaseOfUse: 'cool-down', figures: { maxTemperature: figure(80) } }), 'heat-sensitive'),
    ).toEqual([]);
    expect(at(null, late, 'heat-sensitive')).toEqual([]);
  });
  it('of a phase is its own, else that of the hottest step that names it', () => {
    const one = phase([], null);
    const step = (temperatureC: number | null, phaseIds: string[]) => ({
      ...{
        id: nextId(),
        phaseIds,
        instruction: '',
        temperatureC,
        speedRpm: null,
        minutes: null,
        lookFor: '',
        caution: '',
      },
    });
    const steps = [step(70, [one.id]), step(80, [one.id]), step(95, []), step(null, [one.id])];
    expect(phaseTemperature(content([one], { steps }), one)).toBe(80);
    expect(phaseTemperature(content([one], { steps }), { ...one, temperatureC: 20 })).toBe(20);
    expect(phaseTemperature(content([one]), one)).toBeNull();
  });
});

describe('papers and supply, on a day', () => {
  const of = (parts: Partial<Material>, ruleId: string, onDay = '2026-03-01') => {
    const one = { ...make('Rose', 'Parfum', { functions: ['fragrance'] }), ...parts };
    const input = { content: content([phase([[one, 1]])]), materials: new Map([[one.id, one]]) };
    return checkFormula({ ...input, onDay })
      .filter((found) => found.ruleId === ruleId)
      .map(({ severity, title }) => `${severity}: ${title}`);
  };
  const paper = (validUntil: string, kind: Material['documents'][number]['kind'] = 'safety data sheet') => ({
    documents: [
      {
        id: nextId(),
        kind,
        title: 'SDS',
        dated: '2020-01-01',
        validUntil,
        sha256: 'a'.repeat(64),
        fileName: 'a.pdf',
        bytes: 1,
        added: '2020-01-01',
      } as unknown as Material['documents'][number],
    ],
  });
  it.each([
    ['2026-02-28', ['warn: Expired document: Rose: SDS (until 2026-02-28)']],
    ['2026-03-01', ['note: Document that expires within 60 days: Rose: SDS (until 2026-03-01)']],
    ['2026-04-30', ['note: Document that expires within 60 days: Rose: SDS (until 2026-04-30)']],
    ['2026-05-01', []],
    ['', []],
  ])('a safety data sheet until “%s”, asked about on 1 March', (until, told) => {
    expect(of(paper(until), 'papers')).toEqual(told);
  });
  it('a certificate that is past is a note', () => {
    expect(of(paper('2026-02-28', 'certificate'), 'papers')[0]).toMatch(/^note: Expired certificate/);
  });
  it('a price of two years ago to the day still counts; a leap day too', () => {
    const offer = (date: string) => ({
      offers: [
        { supplier: 'Weir', itemCode: '', packMg: null, priceMinor: null, currency: 'EUR' as const, date },
      ],
    });
    expect(of(offer('2024-03-01'), 'supply')).toEqual([]);
    expect(of(offer('2024-02-29'), 'supply')).toEqual(['note: No price of the last 2 years: Rose']);
    expect(of(offer('2024-02-29'), 'supply', '2026-02-28')).toEqual([]);
    expect(of({ offers: [] }, 'supply')).toEqual(['note: No supplier recorded: Rose']);
    expect(of({ ...offer('2026-01-01'), status: 'on trial' }, 'supply')).toEqual(['note: On trial: Rose']);
    expect(of({ status: 'archived', offers: [] }, 'supply')).toEqual([]);
  });
});

describe('what the checks look at', () => {
  it('a share is read without trailing zeros, to the ppm', () => {
    expect([0, 1, 50, 12_500, 1_000_000, 333_333].map(percentText)).toEqual([
      '0 %',
      '0.0001 %',
      '0.005 %',
      '1.25 %',
      '100 %',
      '33.3333 %',
    ]);
  });
  it('a target pH of one end is that pH alone', () => {
    const of = (phLow: number | null, phHigh: number | null) => {
      const one = content([], { target: { ...blankTarget(), phLow, phHigh } });
      return formulaFacts({ content: one, materials: new Map() }).ph;
    };
    expect(of(5, 6)).toEqual({ low: 5, high: 6 });
    expect(of(5, null)).toEqual({ low: 5, high: 5 });
    expect(of(null, 6)).toEqual({ low: 6, high: 6 });
    expect(of(null, null)).toBeNull();
  });
  it('names each material once, the last with “and”', () => {
    const [a, b, c] = ['A', 'B', 'C'].map((name) => make(name, 'Aqua'));
    const facts = (...of: Material[]) =>
      formulaFacts({
        content: content([phase(of.map((one): Row => [one, 1]))]),
        materials: new Map(of.map((one) => [one.id, one])),
      }).lines;
    expect(namesOf(facts(a!))).toBe('A');
    expect(namesOf(facts(a!, b!))).toBe('A and B');
    expect(namesOf(facts(a!, b!, c!, a!))).toBe('A, B and C');
    expect(namesOf([])).toBe('');
  });
});
