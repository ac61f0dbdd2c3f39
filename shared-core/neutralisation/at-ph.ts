import { badInput, between } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';

const HENDERSON: Source = { text: 'Henderson–Hasselbalch equation', basis: 'memory' };
const DILUTE =
  'Holds in dilute water. Fatty acids at an interface and polyacids such as carbomer titrate at a higher pH than their pKa says.';

function check(pKa: number, pH: number, what: string): void {
  between(pKa, -10, 20, what);
  between(pH, 0, 14, 'pH to reach');
}

/**
 * Fraction of an acid's groups that is neutralised at a pH. One pKa: 1 / (1 + 10^(pKa − pH)). Several, given up one
 * after the other: Σ k·r_k / (n·(1 + Σ r_k)), where r_k = r_(k−1) · 10^(pH − pKa_k) and r_0 = 1.
 *
 * @param pKas one for each acid group, in the order in which they are given up
 * @returns 0 to 1
 * @throws Problem `invalid-input` for pKa or pH out of bounds, no pKa, or pKas that fall
 * Source: Henderson–Hasselbalch; for several, the same law applied step by step.
 */
export function neutralisedFraction(pKas: readonly number[], pH: number): Worked {
  for (const pKa of pKas) check(pKa, pH, 'pKa of the acid');
  const [only] = pKas;
  if (only === undefined) throw badInput('The acid has no pKa.', 'Enter its pKa.', 'pKa of the acid');
  if (pKas.some((pKa, index) => pKa < (pKas[index - 1] ?? pKa)))
    throw badInput(
      `The pKas ${pKas.map(show).join(', ')} do not rise.`,
      'Enter them in rising order: the first group given up has the lowest.',
      'pKa of the acid',
    );
  const steps = pKas.length === 1 ? [oneGroup(only, pH)] : severalGroups(pKas, pH);
  return worked(steps, [HENDERSON], [DILUTE]);
}

function oneGroup(pKa: number, pH: number): WorkingStep {
  return {
    says: 'fraction neutralised at this pH: 1 / (1 + 10^(pKa − pH))',
    shows: `1 / (1 + 10^(${show(pKa)} − ${show(pH)}))`,
    result: 1 / (1 + 10 ** (pKa - pH)),
    unit: '',
  };
}

function severalGroups(pKas: readonly number[], pH: number): WorkingStep[] {
  let ratio = 1;
  const ratios = pKas.map((pKa, index): WorkingStep => {
    const before = ratio;
    ratio *= 10 ** (pH - pKa);
    const power = `10^(${show(pH)} − ${show(pKa)})`;
    return {
      says: `acid that has given up ${index + 1}, for each that has given up none: the one before × 10^(pH − pKa)`,
      shows: index === 0 ? power : `${show(before)} × ${power}`,
      result: ratio,
      unit: '',
    };
  });
  const count = pKas.length;
  const all = 1 + ratios.reduce((sum, step) => sum + step.result, 0);
  const given = ratios.reduce((sum, step, index) => sum + (index + 1) * step.result, 0);
  const terms = ratios.map((step, index) => `${index + 1} × ${show(step.result)}`).join(' + ');
  return [
    ...ratios,
    {
      says: 'fraction of the acid groups neutralised: groups given up / all groups',
      shows: `(${terms}) / (${count} × ${show(all)})`,
      result: given / (count * all),
      unit: '',
    },
  ];
}

/**
 * Share of an amine that has taken up acid at a pH: 1 / (1 + 10^(pH − pKa of its conjugate acid)). The rest stays
 * free and neutralises nothing.
 *
 * @returns 0 to 1
 * @throws Problem `invalid-input`
 * Source: Henderson–Hasselbalch.
 */
export function amineUptake(pKaConjugateAcid: number, pH: number): Worked {
  check(pKaConjugateAcid, pH, 'pKa of the base');
  const step = {
    says: 'share of the amine that takes up acid at this pH: 1 / (1 + 10^(pH − pKa of its conjugate acid))',
    shows: `1 / (1 + 10^(${show(pH)} − ${show(pKaConjugateAcid)}))`,
    result: 1 / (1 + 10 ** (pH - pKaConjugateAcid)),
    unit: '',
  };
  const idle =
    step.result < 0.5
      ? ['At this pH more than half of the amine neutralises nothing: a stronger base serves better.']
      : [];
  return worked([step], [HENDERSON], idle);
}
