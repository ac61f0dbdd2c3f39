import { figure, make } from './build';

/** Invented trade names over real INCI names; HLB and required HLB as in the reference tables. */
export const water = () => make('Water', 'Aqua', { functions: ['solvent'], phaseOfUse: 'water' });
export const mineralOil = () =>
  make('Lamp Oil Light', 'Paraffinum Liquidum', {
    functions: ['emollient'],
    phaseOfUse: 'oil',
    form: 'liquid',
    figures: { requiredHlbOw: figure(10.5, 10, 12), requiredHlbWo: figure(4, 4, 6) },
  });
export const steareth21 = () =>
  make('Harbour 21', 'Steareth-21', {
    functions: ['emulsifier'],
    charge: 'non-ionic',
    architecture: 'classic',
    emulsionType: 'o/w',
    form: 'pellets',
    consistency: 'waxy',
    phaseOfUse: 'oil',
    figures: { hlb: figure(15.5), meltingPoint: figure(45) },
  });
export const steareth2 = () =>
  make('Harbour 2', 'Steareth-2', {
    functions: ['emulsifier'],
    charge: 'non-ionic',
    architecture: 'classic',
    emulsionType: 'w/o',
    form: 'pellets',
    consistency: 'waxy',
    phaseOfUse: 'oil',
    figures: { hlb: figure(4.9), meltingPoint: figure(43) },
  });
export const sorbitanOleate = () =>
  make('Quay O', 'Sorbitan Oleate', {
    functions: ['emulsifier'],
    charge: 'non-ionic',
    architecture: 'classic',
    emulsionType: 'w/o',
    form: 'viscous liquid',
    consistency: 'oily',
    figures: { hlb: figure(4.3) },
  });
export const behentrimonium = () =>
  make('Velvet Q', 'Behentrimonium Methosulfate', {
    functions: ['emulsifier', 'conditioning agent'],
    charge: 'cationic',
    architecture: 'classic',
    emulsionType: 'o/w',
    form: 'pellets',
    consistency: 'waxy',
  });
export const stearoylGlutamate = () =>
  make('Meadow SG', 'Sodium Stearoyl Glutamate', {
    functions: ['emulsifier'],
    charge: 'anionic',
    architecture: 'classic',
    emulsionType: 'o/w',
    form: 'powder',
  });
export const stearicAcid = () =>
  make('Stear Wax', 'Stearic Acid', {
    functions: ['emulsifier'],
    charge: 'anionic',
    needsNeutralising: true,
    form: 'flakes',
    consistency: 'waxy',
    phaseOfUse: 'oil',
  });
export const lye = () =>
  make('Lye 10', ['Aqua', 'Sodium Hydroxide'], { functions: ['base'], hazards: ['caustic'] });
export const carbomer = () =>
  make('Jelly 40', 'Carbomer', { functions: ['thickener'], form: 'powder', needsNeutralising: true });
export const saltCrystals = () => make('Sea Crystals', 'Sodium Chloride', { functions: ['electrolyte'] });
export const phenoxyethanol = () =>
  make('Keepwell P', 'Phenoxyethanol', {
    functions: ['preservative'],
    legalLimit: { ppm: 10_000, note: 'ready for use', source: 'Regulation (EC) No 1223/2009, Annex V' },
  });
