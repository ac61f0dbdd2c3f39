import type { Source } from '../../working/working';
import type { Material } from '../../materials/material';
import type { Charge } from '../../materials/vocabulary';
import { chargeBearers, type ChargeBearer, type Dose } from '../conflicts/charge-bearers';
import { holdsOxyethylene } from '../conflicts/recognise';

/** What the emulsifiers of a system have in common, as frost and heat see it. */
export type ClimateSystem =
  | 'ionic only'
  | 'non-ionic only'
  | 'non-ionic without oxyethylene'
  | 'mixed'
  | 'polymeric or particulate only'
  | 'none';

/** What a stability test stresses, with its conditions as published. */
export interface ClimateTest {
  stress: 'freeze–thaw cycles' | 'heat' | 'both';
  conditions: string;
  why: string;
  source: Source;
}

/** What frost and heat are likely to do to an emulsion, from the charges of its emulsifiers. */
export interface ClimateOutlook {
  /** Which emulsifiers there are; `none` when nothing in the formula emulsifies. */
  system: ClimateSystem;
  ionic: ChargeBearer[];
  nonIonic: ChargeBearer[];
  frost: { risk: 'likely' | 'possible' | 'low' | 'unknown'; says: string; source: Source };
  heat: { risk: 'likely' | 'possible' | 'low' | 'unknown'; says: string; source: Source };
  tests: ClimateTest[];
}

const FREEZE: Source = {
  text: 'Rosen M.J., Surfactants and Interfacial Phenomena, 3rd ed., Wiley, Hoboken 2004',
  basis: 'memory',
};
const DEHYDRATION: Source = {
  text: 'Marquez R., A Short Course on HLD, module 2; for warm climates: common practice, no source',
  basis: 'read',
};
const MIXED: Source = {
  text: 'common practice, no source; the mechanism is published',
  basis: 'common-practice',
};
const CYCLES: Source = {
  text: 'ANVISA, Guia de Estabilidade de Produtos Cosméticos, Brasília 2004',
  basis: 'memory',
};
const OVEN: Source = {
  text: 'IFSCC Monograph No. 2, The Fundamentals of Stability Testing, Micelle Press, Weymouth 1992, as tabulated by a testing laboratory',
  basis: 'read',
};

const SUGARS: Source = {
  text: 'Fukuda K., Söderman O., Lindman B., Shinoda K., Microemulsions formed by alkyl polyglucosides and an alkyl glycerol ether, Langmuir 9, 2921-2925 (1993)',
  basis: 'memory',
};

const CYCLE_TEST: ClimateTest = {
  stress: 'freeze–thaw cycles',
  conditions: '24 h at −10 to 4 °C, then 24 h at 40 to 50 °C; 6 cycles',
  why: 'Ionic emulsifiers crystallise in the cold, and the film round the drops may break.',
  source: CYCLES,
};
const STORAGE_TEST: ClimateTest = {
  stress: 'heat',
  conditions: '45 °C for 1 to 3 months, or 37 °C for 3 to 6 months, beside a control at 4 °C',
  why: 'Heat thins creams and speeds creaming and ageing, whatever the emulsifier.',
  source: OVEN,
};
const HEAT_TEST: ClimateTest = {
  stress: 'heat',
  conditions: '45 °C for 1 to 3 months, or 37 °C for 3 to 6 months, beside a control at 4 °C',
  why: 'Heat dehydrates oxyethylene chains, so that non-ionics turn lipophilic and creams thin or separate.',
  source: OVEN,
};

function isPolymeric(bearer: ChargeBearer): boolean {
  return ['polymer', 'acrylic polymer', 'particle', 'gum'].includes(bearer.kind);
}

/** An emulsifier as frost and heat see it. */
export interface ClimatePart {
  charge: Charge | null;
  polymeric: boolean;
  oxyethylene: boolean;
}

/** What the emulsifiers have in common; amphoterics count for neither side. The one rule for formulas and for ranking. */
export function climateSystem(parts: readonly ClimatePart[]): ClimateSystem {
  const classic = parts.filter((part) => !part.polymeric);
  const ionic = classic.some(({ charge }) => charge === 'anionic' || charge === 'cationic');
  const nonIonic = classic.filter(({ charge }) => charge === 'non-ionic');
  if (ionic) return nonIonic.length > 0 ? 'mixed' : 'ionic only';
  if (nonIonic.length === 0)
    return parts.some((part) => part.polymeric) ? 'polymeric or particulate only' : 'none';
  return nonIonic.some((part) => part.oxyethylene) ? 'non-ionic only' : 'non-ionic without oxyethylene';
}

/** What is recorded of an emulsifier says by what it emulsifies: a little gum in its blend makes no polymer of it. */
function asEmulsifier(bearer: ChargeBearer, { charge, architecture }: Material): ChargeBearer {
  const own = bearer.kind === 'gum' || bearer.kind === 'particle' || bearer.kind === 'polymer';
  return own && charge !== null && architecture === 'classic'
    ? { ...bearer, charge, kind: 'surfactant' }
    : bearer;
}

type Ionics = Pick<ClimateOutlook, 'system' | 'ionic' | 'nonIonic'>;

function systemOf(doses: readonly Dose[]): Ionics {
  const chains = new Set(
    doses.filter(({ material }) => holdsOxyethylene(material)).map(({ lineId }) => lineId),
  );
  const materials = new Map(doses.map(({ lineId, material }) => [lineId, material]));
  const emulsifiers = chargeBearers(doses)
    .filter((bearer) => (bearer.isEmulsifier || bearer.kind === 'soap') && bearer.kind !== 'fatty acid')
    .map((bearer) => {
      const material = materials.get(bearer.lineId);
      return material ? asEmulsifier(bearer, material) : bearer;
    });
  const classic = emulsifiers.filter((bearer) => !isPolymeric(bearer));
  return {
    system: climateSystem(
      emulsifiers.map((bearer) => ({
        charge: bearer.charge,
        polymeric: isPolymeric(bearer),
        oxyethylene: chains.has(bearer.lineId),
      })),
    ),
    ionic: classic.filter((bearer) => bearer.charge === 'anionic' || bearer.charge === 'cationic'),
    nonIonic: classic.filter((bearer) => bearer.charge === 'non-ionic'),
  };
}

function frostOf(system: ClimateOutlook['system']): ClimateOutlook['frost'] {
  switch (system) {
    case 'ionic only':
      return {
        risk: 'likely',
        says: 'Frost is likely to harm it: ionic emulsifiers, soaps above all, crystallise below their Krafft temperature, and creams on them may break on freezing.',
        source: FREEZE,
      };
    case 'mixed':
      return {
        risk: 'low',
        says: 'The non-ionic carries the film through the cold when the ionic crystallises; cycles through freezing must show it.',
        source: MIXED,
      };
    case 'non-ionic only':
    case 'non-ionic without oxyethylene':
      return {
        risk: 'low',
        says: 'Non-ionic systems usually pass freezing and thawing better than ionic ones.',
        source: FREEZE,
      };
    default:
      return {
        risk: 'unknown',
        says: 'The charges say nothing about this: test freezing and thawing.',
        source: MIXED,
      };
  }
}

function heatOf(system: ClimateOutlook['system']): ClimateOutlook['heat'] {
  switch (system) {
    case 'non-ionic only':
      return {
        risk: 'possible',
        says: 'Heat is its weak side: oxyethylene chains dehydrate, the emulsifiers turn lipophilic, and the emulsion thins or inverts.',
        source: DEHYDRATION,
      };
    case 'non-ionic without oxyethylene':
      return {
        risk: 'low',
        says: 'It holds no oxyethylene, so there are no chains to dehydrate: sugar and polyglycerol heads shift little with temperature. Softening and melting are another matter; storage at 45 °C must show it.',
        source: SUGARS,
      };
    case 'mixed':
      return {
        risk: 'low',
        says: 'Ionics shift little with temperature and hold the film when the non-ionic dehydrates; storage at 45 °C must show it.',
        source: MIXED,
      };
    case 'ionic only':
      return {
        risk: 'low',
        says: 'Ionic emulsifiers shift only slightly with temperature (though strongly with salt).',
        source: DEHYDRATION,
      };
    default:
      return {
        risk: 'unknown',
        says: 'The charges say nothing about this: test storage at 45 °C.',
        source: MIXED,
      };
  }
}

function testsFor(system: ClimateOutlook['system']): ClimateTest[] {
  if (system === 'none') return [];
  if (system === 'ionic only') return [CYCLE_TEST];
  if (system === 'non-ionic only') return [HEAT_TEST];
  if (system === 'non-ionic without oxyethylene') return [STORAGE_TEST];
  return [CYCLE_TEST, HEAT_TEST];
}

/**
 * What frost and heat are likely to do to a formula, and which test to add to the stability plan: cycles through
 * freezing for ionics, heat for non-ionics, both for mixed. A screen, not a proof; `tests` is empty where nothing
 * in the formula is an emulsifier.
 *
 * @param doses the formula's lines with their materials
 */
export function climateOutlook(doses: readonly Dose[]): ClimateOutlook {
  const found = systemOf(doses.filter((dose) => dose.ppm > 0));
  return {
    ...found,
    frost: frostOf(found.system),
    heat: heatOf(found.system),
    tests: testsFor(found.system),
  };
}
