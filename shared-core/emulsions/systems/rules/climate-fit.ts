import { hasCharge, NEUTRAL, type Judgement, type SystemRule } from '../system';
import type { Wish } from '../wish';

type Kind = 'ionic' | 'non-ionic' | 'mixed';

const VERDICTS: Record<Kind, Partial<Record<Wish['climate'], Judgement>>> = {
  ionic: {
    frost: { verdict: 'against', strength: 1, why: 'Ionics alone suffer from freezing.' },
    both: { verdict: 'against', strength: 0.7, why: 'Ionics alone suffer from freezing.' },
    hot: { verdict: 'for', strength: 0.5, why: 'Ionics shift little with heat.' },
  },
  'non-ionic': {
    frost: { verdict: 'for', strength: 0.5, why: 'Non-ionics usually pass freezing and thawing.' },
    both: {
      verdict: 'against',
      strength: 0.5,
      why: 'Non-ionics alone lose water from their chains in heat.',
    },
    hot: { verdict: 'against', strength: 0.7, why: 'Non-ionics alone lose water from their chains in heat.' },
  },
  mixed: {
    frost: { verdict: 'for', strength: 0.7, why: 'The non-ionic holds when the ionic crystallises.' },
    both: { verdict: 'for', strength: 1, why: 'Ionic with non-ionic holds in frost and in heat.' },
    hot: { verdict: 'for', strength: 0.7, why: 'The ionic holds when the non-ionic dehydrates.' },
  },
};

export const climateFit: SystemRule = {
  id: 'climate-fit',
  name: 'Holds in the climate',
  says: 'Ionics suffer from frost, non-ionics from heat; for o/w the two together serve all climates.',
  weight: 2,
  source: {
    text: 'common practice, no source; mechanism: Marquez R., A Short Course on HLD, module 2',
    basis: 'common-practice',
  },
  judge(system, { climate, emulsionType }) {
    if (emulsionType === 'w/o') return NEUTRAL;
    const ionic = hasCharge(system, 'anionic') || hasCharge(system, 'cationic');
    const nonIonic = hasCharge(system, 'non-ionic');
    if (!ionic && !nonIonic) return NEUTRAL;
    const kind: Kind = ionic && nonIonic ? 'mixed' : ionic ? 'ionic' : 'non-ionic';
    return VERDICTS[kind][climate] ?? NEUTRAL;
  },
};
