import type { Use } from './use';

/** What a product is, beyond how it is made; each with how it is used, and the parts of the body and forms it is of. */
interface KindFacts {
  use: Use;
  traits: readonly Trait[];
}

/** What a limit of law may be written for besides a kind: a part of the body, or a form that may be breathed in. */
export const TRAITS = [
  'face',
  'hand',
  'body',
  'hair',
  'eye',
  'lip',
  'oral',
  'nail',
  'deodorant',
  'sunscreen',
  'hair dye',
  'nappy area',
  'propellant spray',
  'pump spray',
  'loose powder',
] as const;
export type Trait = (typeof TRAITS)[number];

/** The kinds of product that exposure tables and limits tell apart. */
export const KIND_FACTS = {
  'face cream': { use: 'leave-on', traits: ['face'] },
  'hand cream': { use: 'leave-on', traits: ['hand'] },
  'body lotion': { use: 'leave-on', traits: ['body'] },
  'sunscreen product': { use: 'leave-on', traits: ['face', 'body', 'sunscreen'] },
  'lip product': { use: 'leave-on', traits: ['lip'] },
  'liquid foundation': { use: 'leave-on', traits: ['face'] },
  'face powder': { use: 'leave-on', traits: ['face'] },
  'eye make-up': { use: 'leave-on', traits: ['eye'] },
  mascara: { use: 'leave-on', traits: ['eye'] },
  eyeliner: { use: 'leave-on', traits: ['eye'] },
  'roll-on deodorant': { use: 'leave-on', traits: ['deodorant', 'body'] },
  'deodorant spray': { use: 'leave-on', traits: ['deodorant', 'body', 'propellant spray'] },
  'hair styling product': { use: 'leave-on', traits: ['hair'] },
  'leave-on hair care': { use: 'leave-on', traits: ['hair'] },
  shampoo: { use: 'rinse-off', traits: ['hair'] },
  'hair conditioner': { use: 'rinse-off', traits: ['hair'] },
  'shower gel': { use: 'rinse-off', traits: ['body'] },
  'hand wash': { use: 'rinse-off', traits: ['hand'] },
  'face wash': { use: 'rinse-off', traits: ['face'] },
  'make-up remover': { use: 'rinse-off', traits: ['face'] },
  toothpaste: { use: 'rinse-off', traits: ['oral'] },
  mouthwash: { use: 'rinse-off', traits: ['oral'] },
  'oxidative hair dye': { use: 'rinse-off', traits: ['hair', 'hair dye'] },
  'non-oxidative hair dye': { use: 'rinse-off', traits: ['hair', 'hair dye'] },
  'hair straightener': { use: 'rinse-off', traits: ['hair'] },
  'hair waving product': { use: 'rinse-off', traits: ['hair'] },
  depilatory: { use: 'rinse-off', traits: ['body'] },
  'nail product': { use: 'leave-on', traits: ['nail'] },
  'nail hardener': { use: 'leave-on', traits: ['nail'] },
  'cuticle remover': { use: 'rinse-off', traits: ['nail'] },
} as const satisfies Record<string, KindFacts>;
export type ProductKind = keyof typeof KIND_FACTS;
export const PRODUCT_KINDS = Object.keys(KIND_FACTS) as [ProductKind, ...ProductKind[]];

/** What a limit may name as the products that it is for. */
export const LIMIT_KINDS = [...TRAITS, ...PRODUCT_KINDS] as const;
export type LimitKind = Trait | ProductKind;

/** How it leaves its pack, where that changes what may be breathed in. */
export const DISPENSERS = ['pump spray', 'propellant spray', 'loose powder'] as const;
export type Dispenser = (typeof DISPENSERS)[number];

/** Where it goes, where that is more than the kind says. */
export const SITES = [
  'face',
  'hands',
  'body',
  'hair and scalp',
  'near the eyes',
  'lips',
  'mouth',
  'nails',
  'nappy area',
  'intimate area',
] as const;
export type Site = (typeof SITES)[number];

/** Of which part of the body a site is, in the words of limits; null where no limit has a word of its own for it. */
export const SITE_TRAIT: Readonly<Record<Site, Trait | null>> = {
  face: 'face',
  hands: 'hand',
  body: 'body',
  'hair and scalp': 'hair',
  'near the eyes': 'eye',
  lips: 'lip',
  mouth: 'oral',
  nails: 'nail',
  'nappy area': 'nappy area',
  'intimate area': null,
};

/** For whom it is, where that is more than the public at large. */
export const USERS = [
  'adults',
  'children over 3 years',
  'children under 3 years',
  'pregnancy',
  'professional use',
] as const;
export type User = (typeof USERS)[number];

/** Whose law. Great Britain kept the European text as it was at the end of 2020, and amends it by itself since. */
export const REGIONS = ['EU', 'Great Britain', 'US', 'Canada', 'Australia', 'Japan', 'China'] as const;
export type MarketRegion = (typeof REGIONS)[number];
