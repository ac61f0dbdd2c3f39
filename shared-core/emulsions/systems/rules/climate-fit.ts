import { climateSystem, type ClimateSystem } from '../../climate/climate';
import { NEUTRAL, type Judgement, type SystemRule } from '../system';
import type { Wish } from '../wish';

const HEAT_AGAINST = 'Non-ionics with oxyethylene alone lose water from their chains in heat.';
const NO_CHAINS = 'It holds no oxyethylene that heat could dehydrate, and non-ionics usually pass freezing.';

const VERDICTS: Partial<Record<ClimateSystem, Partial<Record<Wish['climate'], Judgement>>>> = {
  'ionic only': {
    frost: { verdict: 'against', strength: 1, why: 'Ionics alone suffer from freezing.' },
    both: { verdict: 'against', strength: 0.7, why: 'Ionics alone suffer from freezing.' },
    hot: { verdict: 'for', strength: 0.5, why: 'Ionics shift little with heat.' },
  },
  'non-ionic only': {
    frost: { verdict: 'for', strength: 0.5, why: 'Non-ionics usually pass freezing and thawing.' },
    both: { verdict: 'against', strength: 0.5, why: HEAT_AGAINST },
    hot: { verdict: 'against', strength: 0.7, why: HEAT_AGAINST },
  },
  'non-ionic without oxyethylene': {
    frost: { verdict: 'for', strength: 0.5, why: 'Non-ionics usually pass freezing and thawing.' },
    both: { verdict: 'for', strength: 0.4, why: NO_CHAINS },
    hot: { verdict: 'for', strength: 0.3, why: NO_CHAINS },
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
  says: 'Ionics suffer from frost, oxyethylene chains from heat; for o/w the two together serve all climates.',
  weight: 2,
  source: {
    text: 'common practice, no source; mechanism: Marquez R., A Short Course on HLD, module 2',
    basis: 'common-practice',
  },
  judge({ emulsifiers }, { climate, emulsionType }) {
    if (emulsionType === 'w/o') return NEUTRAL;
    return VERDICTS[climateSystem(emulsifiers.map(({ facts }) => facts))]?.[climate] ?? NEUTRAL;
  },
};
