import type { Form } from './form';
import { DENSITY_FORMS } from './forms/density';
import { MICROBIOLOGY_FORMS } from './forms/microbiology';
import { NET_CONTENTS_FORMS } from './forms/net-contents';
import { PHASE_INVERSION_FORMS } from './forms/phase-inversion';
import { SEPARATION_FORMS } from './forms/separation';
import { SOLUBILITY_FORMS } from './forms/solubility';
import { SOLUTION_FORMS } from './forms/solutions';
import { TREND_FORMS } from './forms/trends';
import { VISCOSITY_FORMS } from './forms/viscosity';
import { WEIGHING_FORMS } from './forms/weighing';

/** Small calculations that belong together, shown on one page. */
export interface Topic {
  /** As it stands in the address. */
  key: string;
  name: string;
  /** The emulsion bench, or the calculators. */
  place: 'bench' | 'calculators';
  /** Said before any of them. */
  caution: string;
  forms: Readonly<Record<string, Form>>;
}

export const TOPICS = [
  {
    key: 'phase-inversion',
    name: 'Phase inversion',
    place: 'bench',
    caution:
      'A starting point for ethoxylated non-ionics: the inversion of your own system is found by heating it.',
    forms: PHASE_INVERSION_FORMS,
  },
  {
    key: 'viscosity',
    name: 'Viscosity of oils',
    place: 'bench',
    caution: 'For liquids that flow freely; creams, gels and molten waxes near setting follow no such rule.',
    forms: VISCOSITY_FORMS,
  },
  {
    key: 'density',
    name: 'Density and filling',
    place: 'bench',
    caution: 'Measure the density of the filled product before a fill or a label depends on it.',
    forms: DENSITY_FORMS,
  },
  {
    key: 'solutions',
    name: 'pH and buffers',
    place: 'calculators',
    caution:
      'Acids and alkalis burn: goggles and gloves, either into water and never the reverse. A computed pH is measured before it is relied on.',
    forms: SOLUTION_FORMS,
  },
  {
    key: 'solubility',
    name: 'Solubility',
    place: 'calculators',
    caution:
      'Solubility parameters narrow the choice; what dissolves, and stays dissolved in the cold, is found by trying it.',
    forms: SOLUBILITY_FORMS,
  },
  {
    key: 'screening',
    name: 'Separation and ageing',
    place: 'calculators',
    caution: 'These screen, they do not prove: only real time in the real pack shows what a product does.',
    forms: SEPARATION_FORMS,
  },
  {
    key: 'trends',
    name: 'Stability trends',
    place: 'calculators',
    caution:
      'Statistics describe what was measured. They prove no shelf life: real time in the real pack does, and a qualified assessor decides.',
    forms: TREND_FORMS,
  },
  {
    key: 'microbiology',
    name: 'Microbiology',
    place: 'calculators',
    caution:
      'A laboratory tests, and a qualified assessor decides: these hold its figures against the standards, and prove nothing by themselves.',
    forms: MICROBIOLOGY_FORMS,
  },
  {
    key: 'weighing',
    name: 'Balance',
    place: 'calculators',
    caution:
      'A balance is judged where it stands, with weights that are traceable; its certificate takes precedence.',
    forms: WEIGHING_FORMS,
  },
  {
    key: 'net-contents',
    name: 'Net contents',
    place: 'calculators',
    caution: 'No legal advice: the law where you sell says how packs are checked, and by whom.',
    forms: NET_CONTENTS_FORMS,
  },
] as const satisfies readonly Topic[];

export type TopicKey = (typeof TOPICS)[number]['key'];

/** A topic by its key. */
export function topicOf(key: TopicKey): Topic {
  const found = TOPICS.find((topic) => topic.key === key);
  if (!found) throw new Error(`There is no topic “${key}”.`);
  return found;
}

/** All forms, by key. */
export const FORMS = {
  ...PHASE_INVERSION_FORMS,
  ...VISCOSITY_FORMS,
  ...DENSITY_FORMS,
  ...SOLUTION_FORMS,
  ...SOLUBILITY_FORMS,
  ...SEPARATION_FORMS,
  ...TREND_FORMS,
  ...MICROBIOLOGY_FORMS,
  ...WEIGHING_FORMS,
  ...NET_CONTENTS_FORMS,
} as const satisfies Record<string, Form>;
export type FormKey = keyof typeof FORMS;
export const FORM_KEYS = Object.keys(FORMS) as FormKey[];
