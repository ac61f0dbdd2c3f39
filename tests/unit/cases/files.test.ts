import fc from 'fast-check';
import { expectations, isFigure, workedCase } from '@core/cases/case-schema';
import { KINDS } from '@core/cases/kinds';
import { caseLine, runCaseFile } from '@core/cases/run-file';
import { runCase } from '@core/cases/run-case';
import { describe, expect, it } from 'vitest';

const HALF = {
  id: 'half',
  kind: 'undissociated-percent',
  inputs: { pKa: 4.2, pH: 4.2 },
  expect: { value: 50, unit: '%', tolerance: 0 },
};
const text = (...cases: unknown[]): string => JSON.stringify(cases);

describe('a file of cases', () => {
  it.each([
    ['one case alone', JSON.stringify(HALF)],
    ['a list', text(HALF)],
    ['with a byte-order mark, as Windows writes it', `\uFEFF${text(HALF)}`],
    ['with line ends of Windows', text(HALF).replace(/,/g, ',\r\n')],
  ])('is run: %s', (_, file) => {
    const { results, problem } = runCaseFile('a.json', file);
    expect(problem).toBe('');
    expect(results.map(({ passed }) => passed)).toEqual([true]);
  });

  it.each([
    ['', /^not JSON: /],
    ['{', /^not JSON: /],
    ['[{"id": 1,}]', /^not JSON: /],
    ['[]', /holds no cases/],
    ['12', /a case file is a list of cases/],
    ['"text"', /a case file is a list of cases/],
    ['null', /a case file is a list of cases/],
    ['true', /a case file is a list of cases/],
  ])('%s is told as no file of cases', (file, says) => {
    const { results, problem } = runCaseFile('a.json', file);
    expect(results).toEqual([]);
    expect(problem).toMatch(says);
  });

  it('runs what it can beside what is malformed, and calls what has no id by its place', () => {
    const { results } = runCaseFile(
      'a.json',
      text(HALF, null, { kind: 'x' }, { ...HALF, id: 'again' }, 7, []),
    );
    expect(results.map(({ id, passed }) => [id, passed])).toEqual([
      ['half', true],
      ['case 2', false],
      ['case 3', false],
      ['again', true],
      ['case 5', false],
      ['case 6', false],
    ]);
  });

  it('says of each case in one line what was expected and what came of it', () => {
    expect(caseLine(runCase(HALF, ''))).toBe('half: expected 50 % ± 0; got 50; pass');
    const off = { ...HALF, expect: { value: 49, unit: '%', tolerance: 0.5 } };
    expect(caseLine(runCase(off, ''))).toBe('half: expected 49 % ± 0.5; got 50; fail');
    expect(caseLine(runCase(null, 'case 3'))).toMatch(
      /^case 3: expected nothing readable; got nothing; fail \(/,
    );
    expect(caseLine(runCase({ ...HALF, inputs: { pKa: 4.2, pH: 99 } }, ''))).not.toMatch(/\n/);
  });

  it('never throws, whatever the file holds', () => {
    fc.assert(
      fc.property(fc.json(), (file) => {
        const { results, problem } = runCaseFile('a.json', file);
        expect(results.length > 0 || problem !== '').toBe(true);
        for (const one of results) expect(one.passed && one.why !== '' && one.got !== 'refused').toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it('never throws for a kind that is there and inputs that are not its own', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.keys(KINDS)),
        fc.dictionary(fc.string(), fc.anything()),
        (kind, inputs) => {
          const { passed, got } = runCase({ id: 'x', kind, inputs, expect: { value: 1, tolerance: 0 } }, '');
          expect(passed && got === 'nothing').toBe(false);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('what a case expects', () => {
  const named = (expected: unknown) => expectations(workedCase.parse({ ...HALF, expect: expected }));

  it.each([
    ['a figure', { value: 1, unit: 'g', tolerance: 0.1 }, 1],
    ['a figure without a unit', { value: 1, tolerance: 0.1 }, 1],
    ['a text', 'o/w', 1],
    ['a list', ['a', 2, ['lot', 3]], 1],
    ['a text under its name', { text: 'o/w' }, 1],
    ['a list under its name', { list: ['a', 'b'] }, 1],
    ['several by name', { low: { value: 1, tolerance: 0 }, high: 'much' }, 2],
  ])('may be %s', (_, expected, count) => expect(named(expected)).toHaveLength(count));

  it('a lone value goes by no name, several by theirs', () => {
    expect(named({ value: 1, tolerance: 0 })[0]?.name).toBe('');
    expect(named({ low: { value: 1, tolerance: 0 }, high: 'much' }).map(({ name }) => name)).toEqual([
      'low',
      'high',
    ]);
    expect(isFigure(named({ value: 1, tolerance: 0 })[0]!.expected)).toBe(true);
    expect(isFigure(named('o/w')[0]!.expected)).toBe(false);
  });

  it.each([
    ['no id', { ...HALF, id: '' }, /A case needs an “id”/],
    ['no kind', { ...HALF, kind: '' }, /A case needs a “kind”/],
    ['no inputs', { ...HALF, inputs: undefined }, /A case needs “inputs”/],
    ['inputs that are a list', { ...HALF, inputs: [1] }, /A case needs “inputs”/],
    ['nothing', { ...HALF, expect: undefined }, /“expect” needs a value/],
    ['a bare number', { ...HALF, expect: 50 }, /“expect” needs a value/],
    ['no tolerance', { ...HALF, expect: { value: 50 } }, /./],
    ['a tolerance below zero', { ...HALF, expect: { value: 50, tolerance: -1 } }, /./],
    ['a source that is no text', { ...HALF, source: 12 }, /The source must be a text/],
  ])('%s is told as malformed', (_, one, says) => {
    const { passed, why } = runCase(one, 'case 1');
    expect(passed).toBe(false);
    expect(why).toMatch(/^malformed: /);
    expect(why).toMatch(says);
  });

  it.each([
    [50, 0, true],
    [50.1, 0.1, true],
    [49.9, 0.1, true],
    [50.1, 0.0999, false],
    [49.9, 0.0999, false],
    [50.0000001, 0, false],
    [0, 50, true],
    [-50, 0, false],
  ])('a figure of %d ± %d is met by 50: %s', (value, tolerance, met) =>
    expect(runCase({ ...HALF, expect: { value, unit: '%', tolerance } }, '').passed).toBe(met),
  );
});
