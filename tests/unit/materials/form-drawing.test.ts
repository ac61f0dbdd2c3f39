import { DRAWING, FORM_DRAWINGS } from '@core/materials/form-drawing';
import { FORMS } from '@core/materials/vocabulary';
import { describe, expect, it } from 'vitest';

/** Where a path goes, its relative steps followed; curves by their ends. */
function corners(d: string): [number, number][] {
  const at: [number, number] = [0, 0];
  const seen: [number, number][] = [];
  const TAKES: Record<string, number> = { M: 2, L: 2, C: 6, A: 7, H: 1, V: 1 };
  for (const [, letter = '', rest = ''] of d.matchAll(/([MLCAHVZ])([^MLCAHVZ]*)/gi)) {
    const numbers = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const takes = TAKES[letter.toUpperCase()] ?? 0;
    const relative = letter === letter.toLowerCase();
    for (let from = 0; takes > 0 && from < numbers.length; from += takes) {
      const [x = 0, y = 0] = numbers.slice(from + takes - 2, from + takes);
      const last = numbers[from + takes - 1] ?? 0;
      const upper = letter.toUpperCase();
      const [toX, toY] =
        upper === 'H' ? [last, relative ? 0 : at[1]] : upper === 'V' ? [relative ? 0 : at[0], last] : [x, y];
      at[0] = relative ? at[0] + toX : toX;
      at[1] = relative ? at[1] + toY : toY;
      seen.push([at[0], at[1]]);
    }
  }
  return seen;
}

describe('the drawings of the forms', () => {
  it.each(FORMS)('%s is drawn within its sheet, and like no other', (form) => {
    const strokes = FORM_DRAWINGS[form];
    expect(strokes.length).toBeGreaterThan(2);
    for (const { d } of strokes)
      for (const [x, y] of corners(d)) {
        expect(x, d).toBeGreaterThanOrEqual(0);
        expect(x, d).toBeLessThanOrEqual(DRAWING.width);
        expect(y, d).toBeGreaterThanOrEqual(0);
        expect(y, d).toBeLessThanOrEqual(DRAWING.height);
      }
    const same = FORMS.filter((other) => JSON.stringify(FORM_DRAWINGS[other]) === JSON.stringify(strokes));
    expect(same).toEqual([form]);
  });
});
