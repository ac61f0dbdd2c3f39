import type { DemoEntry } from './build-material';
import { ACIDS_AND_BASES } from './materials/acids-and-bases';
import { ACTIVES } from './materials/actives';
import { ANIONIC_EMULSIFIERS } from './materials/anionic-emulsifiers';
import { CATIONIC_AND_AMPHOTERIC_EMULSIFIERS } from './materials/cationic-and-amphoteric-emulsifiers';
import { FRAGRANCE_AND_COLOUR } from './materials/fragrance-and-colour';
import { HUMECTANTS } from './materials/humectants';
import { NONIONIC_EMULSIFIERS } from './materials/nonionic-emulsifiers';
import { NONIONIC_ESTERS } from './materials/nonionic-esters';
import { OILS } from './materials/oils';
import { POLYMERIC_EMULSIFIERS } from './materials/polymeric-emulsifiers';
import { PRESERVATIVES } from './materials/preservatives';
import { SORBITAN_ESTERS } from './materials/sorbitan-esters';
import { SURFACTANTS_AND_CONDITIONERS } from './materials/surfactants-and-conditioners';
import { THICKENERS } from './materials/thickeners';
import { WAXES_AND_FATS } from './materials/waxes-and-fats';

/** Every raw material of the demonstration shelf, class by class. */
export const MATERIAL_ENTRIES: readonly DemoEntry[] = [
  ...NONIONIC_EMULSIFIERS,
  ...SORBITAN_ESTERS,
  ...NONIONIC_ESTERS,
  ...ANIONIC_EMULSIFIERS,
  ...CATIONIC_AND_AMPHOTERIC_EMULSIFIERS,
  ...POLYMERIC_EMULSIFIERS,
  ...OILS,
  ...WAXES_AND_FATS,
  ...HUMECTANTS,
  ...THICKENERS,
  ...PRESERVATIVES,
  ...ACIDS_AND_BASES,
  ...ACTIVES,
  ...SURFACTANTS_AND_CONDITIONERS,
  ...FRAGRANCE_AND_COLOUR,
];
