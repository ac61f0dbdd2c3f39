import { badInput, between, finite, positive } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Source, Worked } from '../working/working';

const ARAI: Source = {
  text: 'Arai H., Shinoda K., J. Colloid Interface Sci. 25, 396-400 (1967): mean by volume fraction',
  basis: 'memory',
};
const KUNIEDA: Source = {
  text: 'Kunieda H., Shinoda K., J. Colloid Interface Sci. 107, 107-121 (1985): T = K (N_HLB − N_oil)',
  basis: 'memory',
};
const SALAGER: Source = { text: 'Salager and co-workers, HLD of ethoxylated non-ionics', basis: 'memory' };
const BROAD_GRADE =
  'Of ethoxylated non-ionics only. With a grade of broad oxyethylene distribution it falls as its level rises; stirring and the order of addition move it too.';

/** How far printed, rounded fractions may miss 1. */
const SUM_TOLERANCE = 0.005;

/**
 * Phase-inversion temperature of a mixed oil phase: Σ volume fraction × PIT of each oil with the same emulsifier.
 *
 * @param oils volume fractions that sum to 1, PITs in °C
 * @returns °C
 * @throws Problem `invalid-input`
 */
export function mixedInversionTemperature(oils: readonly { volumeFraction: number; pit: number }[]): Worked {
  if (oils.length === 0)
    throw badInput('There is no oil yet.', 'Enter at least one with its PIT.', 'rows', { missing: true });
  for (const oil of oils) {
    between(oil.volumeFraction, 0, 1, 'Volume fraction of an oil');
    between(oil.pit, -50, 200, 'PIT of an oil', '°C');
  }
  const sum = oils.reduce((total, oil) => total + oil.volumeFraction, 0);
  if (Math.abs(sum - 1) > SUM_TOLERANCE)
    throw badInput(
      `The volume fractions sum to ${show(sum)}, not to 1.`,
      'Enter fractions of the whole oil phase.',
    );
  const step = {
    says: 'phase-inversion temperature of the oil mix: Σ volume fraction × PIT',
    shows: oils.map((oil) => `${show(oil.volumeFraction / sum)} × ${showTerm(oil.pit)}`).join(' + '),
    result: oils.reduce((total, oil) => total + oil.volumeFraction * oil.pit, 0) / sum,
    unit: '°C',
  };
  return oneStep(step, [ARAI], [BROAD_GRADE]);
}

/**
 * HLB temperature from the emulsifier's HLB and the oil's own number: K·(N_HLB − N_oil).
 *
 * @param k °C for each unit of HLB, about 17
 * @returns °C
 * @throws Problem `invalid-input`
 */
export function hlbTemperature(k: number, nHlb: number, nOil: number): Worked {
  between(positive(k, 'K'), 0, 100, 'K', '°C');
  between(nHlb, 0, 40, 'HLB of the emulsifier');
  between(nOil, -20, 40, 'Number of the oil');
  const step = {
    says: 'HLB temperature: K × (HLB of the emulsifier − number of the oil)',
    shows: `${show(k)} × (${show(nHlb)} − ${showTerm(nOil)})`,
    result: k * (nHlb - nOil),
    unit: '°C',
  };
  const odd = step.result < 0 || step.result > 100;
  return oneStep(
    step,
    [KUNIEDA],
    [
      'K about 17 °C is for polyoxyethylene alkyl ethers; so one unit of HLB more or less moves the answer by 17 °C.',
      BROAD_GRADE,
      ...(odd ? ['Outside 0 to 100 °C: no inversion to be seen in water.'] : []),
    ],
  );
}

/**
 * How far salt moves a phase-inversion temperature: −b·S / cT.
 *
 * @param b per g/100 mL of sodium chloride, ≥ 0
 * @param cT per °C, > 0
 * @param salinityPercent g per 100 mL of the water, ≥ 0
 * @returns °C, negative
 * @throws Problem `invalid-input`
 */
export function saltShift(b: number, cT: number, salinityPercent: number): Worked {
  between(finite(b, 'b'), 0, 10, 'b');
  between(positive(cT, 'cT'), 0, 10, 'cT');
  between(salinityPercent, 0, 36, 'Salt', 'g per 100 mL');
  const step = {
    says: 'shift by salt: −b × salt / cT',
    shows: `−${show(b)} × ${show(salinityPercent)} / ${show(cT)}`,
    result: 0 - (b * salinityPercent) / cT,
    unit: '°C',
  };
  return oneStep(
    step,
    [SALAGER],
    ['b 0.13 and cT 0.06 are for sodium chloride and ethoxylates; other salts count otherwise.'],
  );
}
