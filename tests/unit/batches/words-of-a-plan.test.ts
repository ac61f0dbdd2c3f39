import { batchLines } from '@core/batches/plan-batch';
import { smallLines } from '@core/batches/small-lines';
import { describe, expect, it } from 'vitest';
import { content, make, phase, type Row } from '../checks/build';
import { refusal } from '../working/refusal';

const water = make('Water', 'Aqua');
const [dye, scent] = [make('Dye', 'CI 42090'), make('Scent', 'Parfum')];
/** Water to 100 %, with so much of the others, %. */
const lotion = (...percents: number[]) => {
  const made = phase([[water, 0], ...percents.map((one, at): Row => [[dye, scent][at]!, one])]);
  made.lines[0]!.toHundred = true;
  return content([made]);
};
const plan = (massMg: number, readabilityMg: number) => ({
  ...{ size: { by: 'mass' as const, massMg }, overagePpm: 0, readabilityMg },
});
const cautions = (of: ReturnType<typeof lotion>, ...asked: Parameters<typeof plan>): string[] =>
  batchLines(of, plan(...asked)).cautions.map((text) => text.replace(/\u00a0/g, ' '));

describe('what is said of a plan', () => {
  it('is nothing where the balance weighs every line to within 1 %', () => {
    expect(cautions(lotion(5, 1), 10_000_000, 100)).toEqual([]);
  });

  // 0.002 % of 1 kg is 20 mg: a balance of 0.1 g shows nothing of it, and 8.2 g is the least that it weighs.
  it('counts a line that is lost, one that is moved and one that is light, each in its own sentence', () => {
    expect(cautions(lotion(0.002), 1_000_000, 100)).toEqual([
      'One line is too small for a balance that reads 0.1 g: use a finer balance, a premix, or a larger batch.',
      'One line is moved by more than 1 % when rounded to the balance’s readability.',
      'One line lies below 8.2 g, the least that this balance weighs to within 1 %: use a finer balance, or the premix below.',
    ]);
  });

  it('counts two as two', () => {
    const said = cautions(lotion(0.002, 0.003), 1_000_000, 100);
    expect(said[0]).toMatch(/^2 lines are too small/);
    expect(said[1]).toMatch(/^2 lines are moved/);
    expect(said[2]).toMatch(/^2 lines lie below 8.2 g/);
  });

  it('of a line that is only light says no more: 0.5 % of 1 kg is 5 g, to the step', () => {
    const said = cautions(lotion(0.5), 1_000_000, 100);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^One line lies below 8.2 g/);
  });

  it('a line of nothing is no small line', () => {
    const of = lotion(0);
    const { totalMg, lines } = batchLines(of, plan(1_000_000, 100));
    expect(smallLines(of, { totalMg, lines, readabilityMg: 100 })).toEqual([]);
  });
});

describe('a formula that cannot be weighed', () => {
  it('says by how much it misses 100 %, as the region writes it', () => {
    const short = content([phase([[water, 99.5]])]);
    refusal(() => batchLines(short, plan(1_000_000, 100)), /The lines come to 99\.50.%, not 100.%/);
    refusal(() => batchLines(short, plan(1_000_000, 100), 'de-DE'), /99,50/);
  });

  it('says that nothing is left for the q.s. line where the others pass 100 %', () => {
    const { fields } = refusal(
      () => batchLines(lotion(60, 50), plan(1_000_000, 100)),
      /nothing is left for the q\.s\. line/,
    );
    expect(fields[0]?.path).toBe('phases');
  });
});
