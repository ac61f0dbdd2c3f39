import { batchLines } from '@core/batches/plan-batch';
import type { Batch } from '@core/batches/batch';
import type { FormulaVersion } from '@core/formulas/formula';
import { smallLinesNodes } from '@core/sheets/batch-small-lines';
import { describe, expect, it } from 'vitest';
import { GUM, MATERIALS, WATER } from './sample-materials';
import { CREAM, CREAM_VERSION, sampleBatch, sampleLine } from './samples';
import { textsOf } from './sheet-words';

const KG = 1_000_000;

/** Water with so much of gum, %. */
function version(percent: number, materials = MATERIALS): FormulaVersion {
  const lines = [sampleLine(WATER, 'q.s.'), sampleLine(GUM, percent)];
  return { ...CREAM_VERSION, materials, content: { ...CREAM, phases: [{ ...CREAM.phases[0]!, lines }] } };
}
function said(
  of: FormulaVersion,
  massMg: number,
  readabilityMg: number,
  region: 'en-GB' | 'de-DE' = 'en-GB',
) {
  const plan = { size: { by: 'mass' as const, massMg }, overagePpm: 0, readabilityMg };
  const { totalMg, lines } = batchLines(of.content, plan);
  const batch: Batch = { ...sampleBatch(), ...plan, totalMg, lines };
  return smallLinesNodes(batch, of, region)
    .flatMap(textsOf)
    .map((text) => text.replace(/\u00a0/g, ' '));
}

describe('lines to weigh with care, on the batch record', () => {
  it('are not spoken of where the balance weighs all of them', () => {
    expect(said(version(5), 100 * KG, 10)).toEqual([]);
  });

  // By hand: 0.006 % of 1 kg are 0.06 g; a step of 0.1 g makes it 0.1 g, two thirds too much; least weight 8.2 g.
  it('tell what is asked for, what the balance makes of it, by how much, and that it is below the least weight', () => {
    const [head, first] = said(version(0.006), KG, 100);
    expect(head).toBe('Lines to weigh with care');
    expect(first).toBe(
      `${GUM.tradeName}: 0.06 g asked for, 0.1 g by this balance (+66.7 %), below its minimum weight.`,
    );
  });

  it('tell the premix to weigh instead, with its carrier, its parts and every step', () => {
    const words = said(version(0.006), KG, 100);
    expect(words[2]).toBe(`Premix with ${WATER.tradeName}: 12.0 g of a mixture of 1 part in 200.`);
    const steps = words.filter((text) => /^\d+\. /.test(text));
    expect(steps.length).toBeGreaterThan(2);
    expect(steps.map((text) => Number(text.split('.')[0]))).toEqual(steps.map((_, at) => at + 1));
  });

  it('name where the least weight comes from, last', () => {
    expect(said(version(0.006), KG, 100).at(-1)).toMatch(/^Source of the minimum weight: USP/);
  });

  it('write rounding that takes away with a real minus', () => {
    // By hand: 0.024 % of 1 kg are 0.24 g; steps of 0.1 g make it 0.2 g: 0.04 of 0.24 less.
    const rounded = said(version(0.024), KG, 100)[1];
    expect(rounded).toContain('0.24 g asked for, 0.2 g by this balance (−16.7 %)');
  });

  it('say a material that is gone is, instead of its name', () => {
    const { [GUM.id]: _, ...others } = MATERIALS;
    expect(said(version(0.006, others), KG, 100)[1]).toMatch(/^Material no longer in the library: 0\.06 g/);
  });

  it('are written with the comma where the region has one', () => {
    expect(said(version(0.006), KG, 100, 'de-DE')[1]).toContain(
      '0,06 g asked for, 0,1 g by this balance (+66,7 %)',
    );
  });

  it('say nothing of rounding that moves nothing, and speak of no other unit than grams', () => {
    // By hand: 0.25 % of 1 kg are 2.5 g, a whole number of steps of 0.1 g, below the 8.2 g that it weighs to 1 %.
    const words = said(version(0.25), KG, 100);
    expect(words[1]).toBe(
      `${GUM.tradeName}: 2.5 g asked for, 2.5 g by this balance, below its minimum weight.`,
    );
    expect(words.join('\n')).not.toMatch(/\d\s(mg|kg)\b/);
    // One mixture is its own product: the first step tells its parts, and no “5 = 5 parts”.
    expect(words.join('\n')).not.toMatch(/\b(\d+) = \1 parts/);
  });

  it('are advised a finer balance where no line can carry a premix', () => {
    // 1 g of batch on a balance of 0.1 g: the water itself weighs less than the least weight.
    const words = said(version(4), 1000, 100);
    expect(words).toContain('No line is large enough to carry a premix: use a finer balance.');
    expect(words.join()).not.toContain('Premix with');
  });
});
