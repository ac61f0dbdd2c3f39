import type { DemoFormula } from './build-formula';
import { ALL_WEATHER_CREAM } from './formulas/all-weather-cream';
import { BODY_MILK } from './formulas/body-milk';
import { CLEANSING_MILK } from './formulas/cleansing-milk';
import { COLD_WEATHER_CREAM } from './formulas/cold-weather-cream';
import { DAY_CREAM } from './formulas/day-cream';
import { FACIAL_GEL } from './formulas/facial-gel';
import { GEL_CREAM } from './formulas/gel-cream';
import { HAIR_CONDITIONER } from './formulas/hair-conditioner';
import { HAND_BALM } from './formulas/hand-balm';
import { MUDDLE } from './formulas/muddle';
import { SUGAR_ESTER_CREAM } from './formulas/sugar-ester-cream';
import { VANISHING_CREAM } from './formulas/vanishing-cream';

/** Every formula of the demonstration library, in the order of its code. */
export const FORMULA_ENTRIES: readonly DemoFormula[] = [
  DAY_CREAM,
  BODY_MILK,
  ALL_WEATHER_CREAM,
  VANISHING_CREAM,
  COLD_WEATHER_CREAM,
  HAIR_CONDITIONER,
  GEL_CREAM,
  CLEANSING_MILK,
  HAND_BALM,
  FACIAL_GEL,
  SUGAR_ESTER_CREAM,
  MUDDLE,
];
