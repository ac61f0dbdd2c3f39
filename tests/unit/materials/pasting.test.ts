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
