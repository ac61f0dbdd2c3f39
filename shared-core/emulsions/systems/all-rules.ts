import { bodyForFeel } from './rules/body-for-feel';
import { cationicWithPartner } from './rules/cationic-with-partner';
import { climateFit } from './rules/climate-fit';
import { cost } from './rules/cost';
import { oneDisperses } from './rules/disperses-in-water';
import { fewerMaterials } from './rules/fewer-materials';
import { gelNetwork } from './rules/gel-network';
import { getsOnWithRest } from './rules/gets-on-with-rest';
import { highWithLow } from './rules/high-with-low';
import { hlbFit } from './rules/hlb-fit';
import { knownFigures } from './rules/known-figures';
import { levelForOil } from './rules/level-for-oil';
import { mildToSkin } from './rules/mild-to-skin';
import { needsBaseToo } from './rules/needs-base';
import { oneSign } from './rules/one-sign';
import { originWish } from './rules/origin-wish';
import { saltTolerance } from './rules/salt-tolerance';
import { servesTheType } from './rules/serves-type';
import { waxyWithLiquid } from './rules/waxy-with-liquid';
import { worksAtPh } from './rules/works-at-ph';
import type { SystemRule } from './system';

/** Every rule by which systems are judged; those that refuse stand first. Adding one: a file, and a line here. */
export const SYSTEM_RULES: readonly SystemRule[] = [
  servesTheType,
  oneDisperses,
  oneSign,
  getsOnWithRest,
  worksAtPh,
  hlbFit,
  waxyWithLiquid,
  cationicWithPartner,
  climateFit,
  bodyForFeel,
  levelForOil,
  saltTolerance,
  mildToSkin,
  originWish,
  highWithLow,
  gelNetwork,
  cost,
  knownFigures,
  needsBaseToo,
  fewerMaterials,
];
