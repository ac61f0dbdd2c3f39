import { named } from '../emulsions/conflicts/recognise';
import { joined } from '../locale/words';
import { KIND_FACTS, SITE_TRAIT, type Trait, type User } from '../products/product-kinds';
import type { Market } from '../products/market';
import { COMMON_PRACTICE, type Source } from '../working/working';
import type { CheckRule, Finding, FindingSeverity } from './check';
import { namesOf, sumPpm, type FormulaFacts, type LineFacts } from './facts';

/** For whom, or where on the body or how dispensed. */
type Ground = Trait | User | 'intimate area';

interface Care {
  grounds: readonly Ground[];
  what: RegExp | ((line: LineFacts) => boolean);
  /** From this share of all such lines on, ppm of the formula. */
  from?: number;
  severity: FindingSeverity;
  why: string;
  source?: Source;
}

const SCCS: Source = {
  text: 'SCCS, The Notes of Guidance for the Testing of Cosmetic Ingredients and their Safety Evaluation, 12th revision (2023): children, sprays and the eye area',
  basis: 'memory',
};
const RETINOID = /^retin(ol|al|yl)|hydroxypinacolone retinoate|^tretinoin|^adapalene/;
const COOLING =
  /^menthol$|^camphor$|^eucalyptol$|eucalyptus globulus|mentha (piperita|arvensis)|^cinnamomum camphora/;
const ACID = /^(glycolic|lactic|mandelic|malic|tartaric|citric|salicylic) acid$/;
const HARSH = /(lauryl|coco|laureth|myreth) sulfate$|olefin sulfonate$/;
const PEELING = 20_000;

const isFragrance = ({ material }: LineFacts): boolean => material.functions.includes('fragrance');
const isPowder = ({ material }: LineFacts): boolean =>
  material.form === 'powder' && material.solubleIn.includes('insoluble');
const isFilm = ({ material }: LineFacts): boolean =>
  material.functions.includes('film former') ||
  named(material, /polyquaternium|acrylates|vp copolymer|^pvp$/);

const SPRAY = ['propellant spray', 'pump spray'] as const;
const CHILD = ['children under 3 years', 'nappy area'] as const;

/** What a formulator looks at twice for a part of the body, a spray, a child or a pregnancy. Common practice where no source stands. */
const CARES: readonly Care[] = [
  {
    grounds: ['eye'],
    what: isFragrance,
    severity: 'warn',
    why: 'Fragrance stings and sensitises at the lid, which is the thinnest skin: leave it out.',
  },
  {
    grounds: ['eye'],
    what: COOLING,
    severity: 'warn',
    why: 'Menthol, camphor and their like make eyes water and burn: leave them out.',
  },
  {
    grounds: ['eye'],
    what: RETINOID,
    severity: 'note',
    why: 'Retinoids irritate the lid and dry the eye: keep them low, and the words “avoid the eyes” on the label.',
  },
  {
    grounds: ['eye'],
    what: HARSH,
    severity: 'note',
    why: 'These surfactants sting: take milder ones, and have an eye test done by a method without animals.',
  },
  {
    grounds: ['lip', 'oral'],
    what: RETINOID,
    severity: 'warn',
    why: 'What is on the lips is swallowed, and vitamin A adds up with food: count it in the exposure, or leave it out.',
    source: SCCS,
  },
  {
    grounds: ['lip', 'oral'],
    what: (line) => isFragrance(line) && !named(line.material, /^aroma/),
    severity: 'note',
    why: 'On lips a flavour safe to swallow is wanted: ask the supplier whether this one is, and name it “aroma”.',
  },
  {
    grounds: ['lip', 'oral'],
    what: /^(chlorphenesin|phenoxyethanol|iodopropynyl|methylisothiazolinone|methylchloroisothiazolinone)/,
    severity: 'note',
    why: 'It is swallowed, and may taste or numb: ask for its use on lips, and count it in the exposure.',
    source: SCCS,
  },
  {
    grounds: SPRAY,
    what: isPowder,
    severity: 'warn',
    why: 'Fine powder in a spray is breathed in: measure the droplets and particles that come out, and let an assessor judge the lung.',
    source: SCCS,
  },
  {
    grounds: SPRAY,
    what: isFilm,
    severity: 'note',
    why: 'Film-forming polymers harm when breathed in: ask for droplets above 10 µm, and have them measured.',
    source: SCCS,
  },
  {
    grounds: SPRAY,
    what: /isothiazolinone|^(benzalkonium|cetrimonium|benzethonium)|polyaminopropyl biguanide|^zinc pyrithione/,
    severity: 'warn',
    why: 'It harms the airways when breathed in: choose another preservative for a spray.',
    source: SCCS,
  },
  {
    grounds: ['loose powder'],
    what: isPowder,
    from: 1,
    severity: 'note',
    why: 'Dust is breathed in at every use: coarse grades, a sifter, and for talc a certificate that it is free of asbestos fibres.',
    source: SCCS,
  },
  {
    grounds: CHILD,
    what: isFragrance,
    severity: 'warn',
    why: 'An infant’s skin is covered, and takes up more for its weight: leave fragrance out, or have it assessed for that age.',
    source: SCCS,
  },
  {
    grounds: CHILD,
    what: COOLING,
    severity: 'stop',
    why: 'Menthol, camphor and eucalyptus can stop a small child’s breath: leave them out below 3 years.',
  },
  {
    grounds: CHILD,
    what: /^phenoxyethanol$/,
    severity: 'note',
    why: 'Some authorities advise against it in the nappy area, and to keep it low elsewhere below 3 years: ask the law where it is sold.',
  },
  {
    grounds: CHILD,
    what: /^alcohol( denat)?/,
    from: 50_000,
    severity: 'warn',
    why: 'Ethanol dries and is taken up through an infant’s skin: leave it out.',
  },
  {
    grounds: CHILD,
    what: ACID,
    from: PEELING,
    severity: 'warn',
    why: 'Acids at this dose peel: not for a small child’s skin.',
  },
  {
    grounds: ['children over 3 years'],
    what: COOLING,
    severity: 'warn',
    why: 'Menthol, camphor and eucalyptus irritate a child’s airways: keep them out of what goes near the face.',
  },
  {
    grounds: ['pregnancy'],
    what: RETINOID,
    severity: 'warn',
    why: 'Vitamin A in excess harms the unborn: health authorities advise against retinoids in pregnancy.',
    source: SCCS,
  },
  {
    grounds: ['pregnancy'],
    what: /^salicylic acid$/,
    from: 5_000,
    severity: 'warn',
    why: 'Salicylic acid is classed as possibly harming the unborn (category 2): keep it low, and let an assessor decide.',
    source: SCCS,
  },
  {
    grounds: ['pregnancy'],
    what: /^hydroquinone$|^(salvia (officinalis|sclarea)|rosmarinus officinalis|juniperus|mentha pulegium|thuja).*oil$/,
    severity: 'warn',
    why: 'Advised against in pregnancy: leave it out, or let an assessor decide.',
  },
  {
    grounds: ['intimate area'],
    what: isFragrance,
    severity: 'warn',
    why: 'Fragrance irritates mucous membranes: leave it out.',
  },
  {
    grounds: ['intimate area'],
    what: HARSH,
    severity: 'note',
    why: 'These surfactants strip mucous membranes: take milder ones, at a pH of about 4 to 5.',
  },
];

/** Everything that a formula's market says of where it goes and for whom. */
function groundsOf({ kind, dispenser, sites, users }: Market): Set<Ground> {
  const grounds = new Set<Ground>(users);
  for (const trait of kind ? KIND_FACTS[kind].traits : []) grounds.add(trait);
  for (const site of sites) {
    const trait = SITE_TRAIT[site];
    if (trait) grounds.add(trait);
    if (site === 'intimate area') grounds.add(site);
  }
  if (dispenser) grounds.add(dispenser);
  return grounds;
}

function judgeCare(care: Care, held: ReadonlySet<Ground>, { used }: FormulaFacts): Finding[] {
  const grounds = care.grounds.filter((one) => held.has(one));
  if (grounds.length === 0) return [];
  const { what } = care;
  const lines = used.filter((line) => (what instanceof RegExp ? named(line.material, what) : what(line)));
  if (lines.length === 0 || sumPpm(lines) < (care.from ?? 0)) return [];
  return [
    {
      ruleId: 'user-and-site',
      severity: care.severity,
      title: `${namesOf(lines)}: look twice for ${joined(grounds)}`,
      lines: lines.map((line) => line.lineId),
      advice: `${care.why} A qualified safety assessor decides.`,
      source: care.source ?? COMMON_PRACTICE,
    },
  ];
}

/** What suits neither the part of the body, nor the way it is dispensed, nor those whom it is for. */
export const userAndSite: CheckRule = {
  id: 'user-and-site',
  name: 'It suits where it goes and whom it is for',
  tells: 'something is ill suited to eyes, lips, sprays, children or pregnancy',
  judge(facts) {
    const held = groundsOf(facts.content.market);
    return CARES.flatMap((care) => judgeCare(care, held, facts));
  },
};
