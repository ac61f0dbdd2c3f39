import { drawStructure } from '@core/structure/drawing';
import { describe, expect, it } from 'vitest';

const texts = (smiles: string): string[] => drawStructure(smiles).labels.map(({ text }) => text);

describe('a structure that is drawn', () => {
  it('shows letters where chemists do: at hetero atoms with their hydrogens, at ions, never within a chain', () => {
    // Glyceryl laurate: one ester (two oxygens) and two hydroxyls.
    expect(texts('CCCCCCCCCCCC(=O)OCC(O)CO').sort()).toEqual(['O', 'O', 'OH', 'OH']);
    expect(texts('CCCCCCCCCCCC(=O)[O-].[Na+]').sort()).toEqual(['Na⁺', 'O', 'O⁻']);
    expect(texts('C[N+](C)(C)C')).toEqual(['N⁺']);
    expect(texts('O')).toEqual(['OH₂']);
  });

  it('draws a bond by as many lines as its order, all within its sheet', () => {
    // Propane has two bonds, propene one of them double; benzene six, three of them double.
    expect(['CCC', 'C=CC', 'c1ccccc1'].map((smiles) => drawStructure(smiles).lines.length)).toEqual([
      2, 3, 9,
    ]);
    for (const smiles of ['CC', 'c1ccccc1CCO', 'CCCCCCCCCCCCCCCCCC(=O)OCCOCCOCCO']) {
      const { width, height, lines } = drawStructure(smiles);
      for (const { x1, y1, x2, y2 } of lines) {
        expect(Math.min(x1, x2, y1, y2)).toBeGreaterThanOrEqual(0);
        expect(Math.max(x1, x2)).toBeLessThanOrEqual(width);
        expect(Math.max(y1, y2)).toBeLessThanOrEqual(height);
      }
    }
  });
});
