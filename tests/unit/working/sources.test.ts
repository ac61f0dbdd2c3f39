import fc from 'fast-check';
import {
  badInput,
  between,
  celsius,
  finite,
  finiteResult,
  nonNegative,
  positive,
} from '@core/working/inputs';
import { oneStep, worked } from '@core/working/one-step';
import { show } from '@core/working/show';
import { sourcesWords, sourceWords } from '@core/working/source-words';
import type { Source } from '@core/working/working';
import { describe, expect, it } from 'vitest';
import { refusal } from './refusal';

describe('a source as it is named', () => {
  it.each<[Source['basis'], string, string]>([
    ['read', 'A book', 'A book'],
    ['memory', 'A book', 'A book (not verified)'],
    ['common-practice', 'A rule', 'A rule (common practice, no source)'],
    ['library', 'Velmora', 'Velmora (as recorded in the library)'],
    ['user', 'pKa', 'pKa (as entered)'],
    // What its text says already is not said again.
    ['memory', 'A book (not verified)', 'A book (not verified)'],
    ['common-practice', 'Common practice, no source', 'Common practice, no source'],
    ['library', 'prices in the library', 'prices in the library'],
    ['library', 'the supplier’s leaflet', 'the supplier’s leaflet'],
    ['user', 'pKa entered by hand', 'pKa entered by hand'],
    ['user', 'your preference', 'your preference'],
  ])('%s: “%s”', (basis, text, words) => {
    expect(sourceWords({ basis, text })).toBe(words);
  });

  it('stands once among several, in the order in which it first came', () => {
    const [a, b]: Source[] = [
      { text: 'A', basis: 'memory' },
      { text: 'B', basis: 'read' },
    ];
    expect(sourcesWords([a!, b!, a!])).toBe('A (not verified); B');
    // One text known in two ways is two statements.
    expect(sourcesWords([a!, { ...a!, basis: 'read' }])).toBe('A (not verified); A');
    expect(sourcesWords([])).toBe('');
  });
});

describe('a working', () => {
  const step = (result: number) => ({ says: 'a step', shows: '1', result, unit: 'g' });

  it('has the value and unit of its last step, and lists of its own', () => {
    const [steps, sources, cautions] = [
      [step(1), { ...step(2), unit: '%' }],
      [{ text: 'A', basis: 'read' as const }],
      ['Mind it.'],
    ];
    const found = worked(steps, sources, cautions);
    expect(found).toEqual({ value: 2, unit: '%', steps, sources, cautions });
    steps.push(step(3));
    cautions.push('More.');
    expect(found.steps).toHaveLength(2);
    expect(found.cautions).toEqual(['Mind it.']);
    expect(oneStep(step(5), []).value).toBe(5);
  });

  it('refuses a figure that overflowed or is none, and has no answer without a step', () => {
    for (const result of [Number.NaN, Infinity, -Infinity])
      refusal(() => oneStep(step(result), []), /beyond what can be computed/);
    expect(() => worked([], [])).toThrow('A working needs a step.');
  });
});

describe('numbers that go in', () => {
  const any = fc.double({ min: -1e9, max: 1e9, noNaN: true });

  it('come back as they are, where they may stand, and are refused by name where not', () => {
    fc.assert(
      fc.property(any, any, any, (value, one, other) => {
        const [min, max] = [Math.min(one, other), Math.max(one, other)];
        const attempt = () => between(value, min, max, 'The level');
        if (value >= min && value <= max) expect(attempt()).toBe(value);
        else refusal(attempt, /^The level is/);
        if (value > 0) expect(positive(value, 'It')).toBe(value);
        else refusal(() => positive(value, 'It'), /more than zero/);
        if (value >= 0) expect(nonNegative(value, 'It')).toBe(value);
        else refusal(() => nonNegative(value, 'It'), /cannot be negative/);
        expect(finite(value, 'It')).toBe(value);
        expect(finiteResult(value, 'It')).toBe(value);
      }),
      { numRuns: 80 },
    );
  });

  it('count both ends as within, and say the unit behind each bound', () => {
    expect(between(0, 0, 100, 'Share', '%')).toBe(0);
    expect(between(100, 0, 100, 'Share', '%')).toBe(100);
    expect(refusal(() => between(100.5, 0, 100, 'Share', '%'), /Share/).message).toBe(
      'Share is 100.5 %; it must lie between 0 and 100 %.',
    );
    expect(celsius(-273.15, 'Temperature')).toBe(-273.15);
    refusal(() => celsius(-273.16, 'Temperature'), /°C; it must lie between −273.15 and 1000 °C/);
  });

  it('that are no numbers at all are refused, whatever was handed over', () => {
    for (const value of ['5', null, undefined, {}, true])
      refusal(() => finite(value as unknown as number, 'The pH'), /^The pH is not a number/);
  });

  it('are named in advice as in a sentence, but for what the trade writes in capitals', () => {
    expect(refusal(() => finite(Number.NaN, 'Molar mass'), /./).advice).toBe(
      'Enter a number for molar mass.',
    );
    expect(refusal(() => finite(Number.NaN, 'HLB'), /./).advice).toBe('Enter a number for HLB.');
    expect(refusal(() => finite(Number.NaN, 'pKa'), /./).advice).toBe('Enter a number for pKa.');
  });

  it('are marked at their place, and nowhere without one', () => {
    expect(badInput('Wrong.', 'Mend it.', 'rows.1').fields).toEqual([{ path: 'rows.1', message: 'Wrong.' }]);
    expect(badInput('Wrong.', 'Mend it.').fields).toEqual([]);
  });
});

describe('a number as it is shown', () => {
  it('is read back within half of its sixth digit, and never with a hyphen', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e15, noNaN: true }), fc.boolean(), (size, below) => {
        const value = below ? -size : size;
        const text = show(value);
        expect(text).not.toContain('-');
        const read = Number(text.replaceAll('−', '-').replace(/ × 10\^/, 'e'));
        expect(Math.abs(read - value)).toBeLessThanOrEqual(Math.abs(value) * 5.01e-5);
        expect(text.startsWith('−')).toBe(below);
      }),
      { numRuns: 200 },
    );
  });

  it('has six digits between a ten-thousandth and a thousand millions, powers of ten beyond', () => {
    expect(show(123456.789)).toBe('123457');
    expect(show(0.0001)).toBe('0.0001');
    expect(show(0.00009999)).toBe('9.999 × 10^−5');
    expect(show(999_999_999)).toBe('1000000000');
    expect(show(1e9)).toBe('1 × 10^9');
    expect(show(-0)).toBe('0');
  });
});
