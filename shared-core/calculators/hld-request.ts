import { z } from 'zod';
import { id } from '../record/id';
import { lineText } from '../quantities/text';
import { amount } from './amount';

/** One oil or surfactant of a mix: picked from the library, or typed with its own value. */
export const mixLine = z.object({
  materialId: id.nullable(),
  name: lineText(200),
  /** By mass, in any one unit. */
  parts: amount,
  /** EACN or Cc, where typed; a picked material's own figure is read from the library. */
  value: amount,
  /** g/mol, where typed; only surfactants need it. */
  molarMass: amount,
});
export type MixLine = z.infer<typeof mixLine>;

const mix = z.array(mixLine).max(40, 'A mix can hold 40 lines at most.');

export const hldRequest = z.object({
  of: z.literal('hld'),
  kind: z.enum(['ionic', 'non-ionic']),
  oils: mix,
  surfactants: mix,
  /** g NaCl per 100 mL of water phase. */
  salinityPercent: amount,
  /** °C */
  temperature: amount,
  alcoholTerm: amount,
  k: amount,
  alphaT: amount,
  b: amount,
  cT: amount,
  /** Storage temperatures, °C. */
  coldest: amount,
  hottest: amount,
});
export type HldRequest = z.infer<typeof hldRequest>;

export const BLANK_LINE: MixLine = { materialId: null, name: '', parts: 1, value: null, molarMass: null };

/** Nothing known but what the screen shows as filled in. */
export const BLANK_HLD: HldRequest = {
  of: 'hld',
  kind: 'non-ionic',
  oils: [],
  surfactants: [],
  salinityPercent: 0,
  temperature: 25,
  alcoholTerm: 0,
  k: null,
  alphaT: null,
  b: null,
  cT: null,
  coldest: 5,
  hottest: 40,
};
