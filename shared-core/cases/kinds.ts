import { acceleratedAgeing, activationEnergy, q10ShelfLife } from '../physics/ageing';
import { rcf } from '../physics/centrifuge';
import { stokesVelocity } from '../physics/creaming';
import { densityFill } from '../physics/density-fill';
import { dilution } from '../physics/dilution';
import { suspensionViscosity } from '../physics/suspension-viscosity';
import { undissociatedAmount, undissociatedPercent } from '../preservation/undissociated';
import { daviesHlb } from '../emulsions/davies';
import { blendHlb } from '../emulsions/blend-hlb';
import { blendForTarget } from '../emulsions/blend-two';
import { ccMix } from '../emulsions/cc';
import { eacnMix } from '../emulsions/eacn';
import { emulsifierMasses } from '../emulsions/emulsifier-masses';
import { griffinEster, griffinEthoxylate, griffinMass } from '../emulsions/griffin';
import { hldIonic, hldNonionic } from '../emulsions/hld';
import { hldZeroSalinity, hldZeroTemperature } from '../emulsions/hld-zero';
import { neutralise } from '../neutralisation/neutralise';
import { molarMassOfFormula } from '../structure/formula-mass';
import { molarMassOfSmiles } from '../structure/molar-mass';
import * as shape from './input-shapes';
import { kind, type Kind } from './kind';
import { EXPOSURE_KINDS } from './exposure-kinds';
import { LAW_KINDS } from './law-kinds';
import { MICROBIOLOGY_KINDS } from './microbiology-kinds';
import { OIL_KINDS } from './oil-kinds';
import { TREND_KINDS } from './trend-kinds';
import { WEIGHING_KINDS } from './weighing-kinds';
import { SOLUBILITY_KINDS } from './solubility-kinds';
import { SOLUTION_KINDS } from './solution-kinds';
import { STRUCTURE_KINDS } from './structure-kinds';

/** Every kind of worked example that can be run, by the name that case files use. */
export const KINDS: Readonly<Record<string, Kind>> = {
  ...SOLUTION_KINDS,
  ...SOLUBILITY_KINDS,
  ...MICROBIOLOGY_KINDS,
  ...STRUCTURE_KINDS,
  ...OIL_KINDS,
  ...LAW_KINDS,
  ...EXPOSURE_KINDS,
  ...WEIGHING_KINDS,
  ...TREND_KINDS,
  'hlb-ethoxylate': kind(shape.ethoxylate, (i) => griffinEthoxylate(i.oxyethylenePercent).value),
  'hlb-ester': kind(shape.ester, (i) => griffinEster(i.saponificationNumber, i.acidNumber).value),
  'hlb-mass': kind(shape.massFraction, (i) => griffinMass(i.hydrophilicMolarMass, i.molarMass).value),
  'hlb-davies': kind(shape.davies, (i) => daviesHlb(i.groups).value),
  'required-hlb': kind(shape.oilPhase, (i) => shape.required(i.oils)),
  'blend-hlb': kind(shape.emulsifiers, (i) => blendHlb(i.emulsifiers).value),
  'blend-share': kind(shape.pair, (i) => blendForTarget(i).highPercent),
  'emulsifier-masses': kind(shape.pairMasses, (i) => {
    const target = i.targetHlb ?? shape.required(i.oils ?? []);
    const { lowMass, highMass } = emulsifierMasses(target, i.lowHlb, i.highHlb, i.totalEmulsifierMass);
    return { lowMass, highMass };
  }),
  'eacn-mix': kind(shape.eacnOils, (i) => eacnMix(i.oils).value),
  'cc-mix': kind(shape.ccSurfactants, (i) => ccMix(i.surfactants).value),
  'hld-ionic': kind(shape.ionic, ({ temperature, ...system }) => hldIonic(system, temperature).value),
  'hld-nonionic': kind(
    shape.nonionic,
    ({ temperature, ...system }) => hldNonionic(system, temperature).value,
  ),
  'hld-zero-temperature': kind(shape.nonionicAnywhere, (i) => hldZeroTemperature(i).value),
  'hld-zero-salinity': kind(
    shape.ionicAnySalinity,
    ({ temperature, ...system }) => hldZeroSalinity(system, temperature).value,
  ),
  neutralisation: kind(shape.neutralisation, (i) => neutralise(shape.neutralisationWish(i)).solutionMass),
  'undissociated-percent': kind(shape.acidAtPh, (i) => undissociatedPercent(i.pKa, i.pH).value),
  'undissociated-amount': kind(shape.doseAtPh, (i) => undissociatedAmount(i.totalPercent, i.pKa, i.pH).value),
  'stokes-velocity': kind(
    shape.droplet,
    (i) => stokesVelocity(i.radius, i.densityDifference, i.viscosity).value,
  ),
  rcf: kind(shape.rotor, (i) => rcf(i.radiusCm, i.rpm).value),
  'accelerated-ageing': kind(
    shape.ageing,
    (i) => acceleratedAgeing(i.realTemperature, i.testTemperature, i.q10, i.realTime).value,
  ),
  'q10-shelf-life': kind(
    shape.shelfLife,
    (i) => q10ShelfLife(i.q10, i.knownTemperature, i.knownTime, i.temperature).value,
  ),
  'activation-energy': kind(
    shape.q10Pair,
    (i) => activationEnergy(i.q10, i.temperature1, i.temperature2).value,
  ),
  'suspension-viscosity': kind(
    shape.suspension,
    (i) => suspensionViscosity(i.phi, i.phiMax, i.intrinsicViscosity, i.mediumViscosity).value,
  ),
  'molar-mass': kind(shape.substance, (i) =>
    'smiles' in i ? molarMassOfSmiles(i.smiles).value : molarMassOfFormula(i.formula).value,
  ),
  dilution: kind(shape.dilution, (i) => dilution(i.c1, i.v1, i.c2).value),
  'density-fill': kind(shape.fill, (i) => densityFill(i.volume, i.density).value),
};
