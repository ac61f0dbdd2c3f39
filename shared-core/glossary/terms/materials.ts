import {
  EXCIPIENTS,
  GOLD_BOOK,
  PERRIN,
  PRACTICE,
  REGULATION,
  ROSEN,
  SINKO,
  SMILES_SPECIFICATION,
  USP,
} from '../sources';
import type { Term } from '../term';

/** Raw materials, and the figures that describe them. */
export const MATERIAL_TERMS = {
  inci: {
    term: 'INCI',
    also: ['INCI name'],
    says: 'International Nomenclature of Cosmetic Ingredients: the names by which ingredients are listed on a label, the same in most countries.',
    source: REGULATION,
  },
  'trade-name': {
    term: 'trade name',
    says: 'The name under which a supplier sells a material. One trade name may hold several INCI names.',
    source: PRACTICE,
  },
  blend: {
    term: 'blend',
    says: 'A raw material of more than one INCI name, each with its share.',
    source: PRACTICE,
  },
  'active-matter': {
    term: 'active matter',
    says: 'The share of a material that does its work, without water or salt. Acids, bases and surfactants are calculated by it.',
    source: PRACTICE,
  },
  'drop-point': {
    term: 'drop point',
    also: ['melting point', 'dropping point'],
    says: 'The temperature at which the first drop of a warmed wax or fat falls. Waxes are mixtures and have no sharp melting point.',
    source: USP,
  },
  'acid-value': {
    term: 'acid value',
    also: ['acid number'],
    says: 'Milligrams of potassium hydroxide that neutralise the free acid in 1 g. It says how much base a fatty acid takes.',
    source: USP,
  },
  'saponification-value': {
    term: 'saponification value',
    also: ['saponification number'],
    says: 'Milligrams of potassium hydroxide that neutralise the acids and split the esters in 1 g.',
    source: USP,
  },
  pka: {
    term: 'pKa',
    says: 'The pH at which half of an acid has given up its hydrogen. One pH unit below it, 91 % is still undissociated.',
    source: PERRIN,
  },
  ph: {
    term: 'pH',
    says: 'How acid or alkaline water is: 7 is neutral, each unit is a factor of ten. Skin is near 5.',
    source: GOLD_BOOK,
  },
  'molar-mass': {
    term: 'molar mass',
    also: ['molecular weight', 'molecular mass'],
    says: 'The mass of one mole of a substance in grams: the sum of the atomic weights in its formula.',
    source: GOLD_BOOK,
  },
  smiles: {
    term: 'SMILES',
    says: 'A way to write a structure as a line of text: CCO is ethanol, CC(=O)O acetic acid.',
    source: SMILES_SPECIFICATION,
  },
  'fatty-alcohol': {
    term: 'fatty alcohol',
    says: 'A waxy alcohol of 12 to 22 carbons, such as cetearyl alcohol. With a high-HLB emulsifier it builds the gel network of a cream.',
    source: EXCIPIENTS,
  },
  'fatty-acid': {
    term: 'fatty acid',
    says: 'A waxy or oily acid of 12 to 22 carbons, such as stearic acid. It emulsifies only once a base makes soap of part of it.',
    source: SINKO,
  },
  ester: {
    term: 'ester',
    says: 'What an acid and an alcohol form, such as isopropyl myristate. Light dry oils and most fats are esters.',
    source: GOLD_BOOK,
  },
  triglyceride: {
    term: 'triglyceride',
    says: 'Three fatty acids on one glycerol: the substance of plant oils and butters.',
    source: GOLD_BOOK,
  },
  emollient: {
    term: 'emollient',
    says: 'An oil, fat or silicone that softens and smooths the skin.',
    source: PRACTICE,
  },
  humectant: {
    term: 'humectant',
    says: 'A substance that holds water, such as glycerin or urea.',
    source: EXCIPIENTS,
  },
  chelator: {
    term: 'chelator',
    also: ['chelating agent', 'sequestrant'],
    says: 'A substance that binds traces of metal, such as disodium EDTA. It protects oils and helps preservatives.',
    source: EXCIPIENTS,
  },
  electrolyte: {
    term: 'electrolyte',
    also: ['salt'],
    says: 'A salt, acid or base that splits into ions in water. It thins carbomer gels and disturbs ionic emulsifiers.',
    source: GOLD_BOOK,
  },
  carbomer: {
    term: 'carbomer',
    says: 'A cross-linked polymer of acrylic acid. It thickens water once a base neutralises it, and salt thins it again.',
    source: EXCIPIENTS,
  },
  quat: {
    term: 'quaternary ammonium compound',
    also: ['quat'],
    says: 'A nitrogen with four carbons and a lasting positive charge: the usual conditioner for hair.',
    source: ROSEN,
  },
  'water-activity': {
    term: 'water activity',
    also: ['aw'],
    says: 'How much of the water is free for microbes, from 0 to 1. Glycols, sugars and salts lower it.',
    source: USP,
  },
  viscosity: {
    term: 'viscosity',
    also: ['mPa·s'],
    says: 'Resistance to flow. Water has about 1 mPa·s, a cream tens of thousands; the instrument, spindle, speed and temperature belong to the figure.',
    source: SINKO,
  },
  'yield-stress': {
    term: 'yield stress',
    also: ['yield value', 'yield point'],
    says: 'The push that a cream or gel needs before it flows at all. It keeps droplets and bubbles in place.',
    source: SINKO,
  },
  'specific-gravity': {
    term: 'specific gravity',
    also: ['relative density'],
    says: 'The density of a liquid over that of water at the same temperature. It has no unit.',
    source: USP,
  },
} as const satisfies Record<string, Term>;
