/** The trade's words for raw materials. Values are stored; labels are shown. */

export const CHARGES = ['anionic', 'cationic', 'non-ionic', 'amphoteric'] as const;
export const ARCHITECTURES = ['classic', 'polymeric', 'particulate'] as const;
export const EMULSION_TYPES = ['o/w', 'w/o', 'both'] as const;
export const FUNCTIONS = [
  'emulsifier',
  'co-emulsifier',
  'emollient',
  'humectant',
  'thickener',
  'preservative',
  'preservative booster',
  'chelator',
  'acid',
  'base',
  'active',
  'antioxidant',
  'fragrance',
  'colorant',
  'solvent',
  'surfactant',
  'conditioning agent',
  'film former',
  'opacifier',
  'uv filter',
  'electrolyte',
] as const;
export const PHASES_OF_USE = ['oil', 'water', 'cool-down', 'any'] as const;
export const FORMS = [
  'pellets',
  'flakes',
  'beads',
  'powder',
  'granules',
  'paste',
  'liquid',
  'viscous liquid',
  'block',
] as const;
/** Forms that are solid at room temperature, so that they need melting, dissolving or dispersing. */
export const SOLID_FORMS: readonly Form[] = ['pellets', 'flakes', 'beads', 'powder', 'granules', 'block'];
export const CONSISTENCIES = ['waxy', 'oily', 'watery', 'resinous'] as const;
export const ORIGINS = ['natural', 'naturally derived', 'mineral', 'synthetic'] as const;
export const STATUSES = ['in use', 'on trial', 'archived'] as const;
export const KEEP_FROM = ['light', 'moisture', 'frost', 'air', 'heat'] as const;
export const SOLUBILITIES = [
  'water',
  'hot water',
  'oil',
  'hot oil',
  'ethanol',
  'glycols',
  'disperses in water',
  'disperses in oil',
  'insoluble',
] as const;
export const TOLERANCES = ['low', 'moderate', 'high'] as const;
export const BODY = ['none', 'some', 'strong'] as const;
export const HAZARDS = [
  'caustic',
  'strong acid',
  'fine dust',
  'flammable',
  'sensitiser',
  'irritant',
  'harmful undiluted',
  'oxidiser',
] as const;
export const PROVENANCES = ['supplier', 'published', 'measured', 'computed', 'estimated'] as const;
export const DOCUMENT_KINDS = ['safety data sheet', 'specification', 'certificate', 'other'] as const;

export type Charge = (typeof CHARGES)[number];
export type Architecture = (typeof ARCHITECTURES)[number];
export type EmulsionType = (typeof EMULSION_TYPES)[number];
export type MaterialFunction = (typeof FUNCTIONS)[number];
export type Form = (typeof FORMS)[number];
export type Consistency = (typeof CONSISTENCIES)[number];
export type Origin = (typeof ORIGINS)[number];
export type Status = (typeof STATUSES)[number];
export type KeepFrom = (typeof KEEP_FROM)[number];
export type Tolerance = (typeof TOLERANCES)[number];
export type Body = (typeof BODY)[number];
export type Hazard = (typeof HAZARDS)[number];
export type Provenance = (typeof PROVENANCES)[number];
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];
