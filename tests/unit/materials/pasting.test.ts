import { isBlock, pastedComposition, withPastedParts } from '@core/materials/pasting/pasted-composition';
import { pastedFigures } from '@core/materials/pasting/pasted-figures';
import { describe, expect, it } from 'vitest';

const part = (inci: string, low: number, high = low) => ({
  inci,
  lowPpm: low * 10_000,
  highPpm: high * 10_000,
});

describe('a block pasted into a composition', () => {
  it.each([
    [
      'INCI\t%\nCetearyl Alcohol\t75,5\nCeteareth-20\t24,5',
      [part('Cetearyl Alcohol', 75.5), part('Ceteareth-20', 24.5)],
    ],
    [
      'Cetearyl Alcohol\t67762-27-0\t70\t80\nCeteareth-20\t68439-49-6\t20\t30\nTotal\t\t100',
      [part('Cetearyl Alcohol', 70, 80), part('Ceteareth-20', 20, 30)],
    ],
    ['Glycerin\t0.6\nAqua\t0.4', [part('Glycerin', 60), part('Aqua', 40)]],
    ['Decyl Glucoside\t50 – 55 %\nAqua\t45 – 50 %', [part('Decyl Glucoside', 50, 55), part('Aqua', 45, 50)]],
  ])('%j', (text, parts) => {
    expect(pastedComposition(text)).toEqual({ ok: true, parts });
  });

  it('is refused with why, whole, where a share cannot be', () => {
    expect(pastedComposition('Glycerin\t160\nAqua\t40')).toMatchObject({ ok: false });
    expect(pastedComposition('Glycerin\t60\nAqua\t70')).toMatchObject({ ok: false });
    expect(pastedComposition('Glycerin\t60\t70\t80\nAqua\t40')).toMatchObject({ ok: false });
  });

  it('loses no name that comes without a share: it may be all that the others leave', () => {
    const parts = [part('Aqua', 0, 65), part('Glycerin', 30), part('Sodium Benzoate', 5)];
    for (const text of [
      'Aqua\t\nGlycerin\t30\nSodium Benzoate\t5',
      'INCI\tShare\nAqua\tq.s.\nGlycerin\t30\nSodium Benzoate\t5',
      'Zusammensetzung\t\nAqua\t–\nGlycerin\t30 %\nSodium Benzoate\t5 %\nSumme\t35 %',
    ])
      expect(pastedComposition(text), text).toEqual({ ok: true, parts });
    expect(pastedComposition('Aqua\nGlycerin')).toEqual({
      ok: true,
      parts: [part('Aqua', 0, 100), part('Glycerin', 0, 100)],
    });
    expect(pastedComposition('Parfum\t100\nLimonene\t')).toEqual({
      ok: true,
      parts: [part('Parfum', 100), part('Limonene', 0, 0)],
    });
  });

  it('that names nothing, or whose range falls, says so', () => {
    expect(pastedComposition('12\t30\n13\t70')).toEqual({
      ok: false,
      message: 'What was pasted holds no INCI name.',
    });
    expect(pastedComposition('Glycerin\t60\t50\nAqua\t40')).toEqual({
      ok: false,
      message: '“Glycerin”: “60 – 50”: the range runs downwards.',
    });
    expect(pastedComposition('Glycerin\t60\t70\t80\nAqua\t40')).toEqual({
      ok: false,
      message: '“Glycerin” has more than two numbers: paste the names with their shares alone.',
    });
    expect(pastedComposition('Parfum\t500 ppm\nAqua\t99,95')).toEqual({
      ok: true,
      parts: [part('Parfum', 0.05), part('Aqua', 99.95)],
    });
  });

  it('takes the place of all that stood there where it is whole, and is added where it is a part', () => {
    const before = [part('Glycerin', 100)];
    expect(withPastedParts(before, [part('Aqua', 50), part('Urea', 50)])).toHaveLength(2);
    expect(withPastedParts(before, [part('Tocopherol', 0.1)])).toEqual([...before, part('Tocopherol', 0.1)]);
  });

  it('is told from a word for one field', () => {
    expect([isBlock('Glycerin'), isBlock('Glycerin\n'), isBlock('A\tB'), isBlock('A\nB')]).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });
});

describe('a block pasted into the figures', () => {
  it('fills what it names, in our units, and says what it could not tell', () => {
    const { figures, left } = pastedFigures(
      'HLB\t11,5\nSäurezahl\t\t2\tmg KOH/g\nMelting range\t58\t62\t°C\nColour\t3\nViscosity\t2\tPa·s\nHLB value\tvery high 99\nNote\tnone',
    );
    expect(figures).toEqual({
      hlb: { low: null, value: 11.5, high: null },
      acidValue: { low: null, value: 2, high: null },
      meltingPoint: { low: 58, value: null, high: 62 },
      viscosity: { low: null, value: 2000, high: null },
    });
    expect(left).toEqual(['Colour 3', 'HLB value very high 99']);
  });
});
