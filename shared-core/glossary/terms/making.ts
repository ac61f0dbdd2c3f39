import { AULTON, GMP, GOLD_BOOK, PERRIN, PRACTICE, REGULATION, USP, book } from '../sources';
import type { Term } from '../term';

/** Formulas, batches, preservation, testing and the law. */
export const MAKING_TERMS = {
  qs: {
    term: 'q.s.',
    also: ['quantum satis', 'q.s. to 100', 'to 100', 'qs'],
    says: 'As much as is needed: the line, usually water, that makes the others up to 100 %.',
    source: USP,
  },
  'w-w': {
    term: '% w/w',
    also: ['per cent by weight', 'per cent by mass'],
    says: 'Grams in 100 g. Formulas are written by mass, since volumes change with heat and air.',
    source: USP,
  },
  phase: {
    term: 'phase',
    also: ['phase A'],
    says: 'Lines of a formula that are weighed and handled together, lettered A, B, C in the order of making.',
    source: PRACTICE,
  },
  'cool-down': {
    term: 'cool-down',
    says: 'The phase added below about 40 °C: fragrance, preservatives and actives that heat would harm.',
    source: PRACTICE,
  },
  premix: {
    term: 'premix',
    says: 'A small amount diluted in part of another material first, so that what is weighed is enough for the balance.',
    source: PRACTICE,
  },
  neutralise: {
    term: 'neutralise',
    also: ['neutralisation'],
    says: 'To add base to an acid (or acid to a base) until a share of its groups has reacted, or a pH is reached.',
    source: PERRIN,
  },
  buffer: {
    term: 'buffer',
    says: 'An acid with its salt. It holds the pH against small additions, best within one unit of the pKa.',
    source: PERRIN,
  },
  'ionic-strength': {
    term: 'ionic strength',
    says: 'Half the sum of each ion’s concentration times its charge squared: how strongly dissolved salt acts.',
    source: GOLD_BOOK,
  },
  readability: {
    term: 'readability',
    also: ['balance readability'],
    says: 'The smallest step that a balance shows, such as 0.1 g.',
    source: USP,
  },
  'minimum-weight': {
    term: 'minimum weight',
    says: 'The least that a balance weighs to a stated accuracy: 2 standard deviations of repeated weighings over the limit, such as 0.1 %.',
    source: book('USP General Chapter 41, Balances, Rockville 2019'),
  },
  overage: {
    term: 'overage',
    says: 'What is made beyond the size asked for, to cover what stays in vessel and filler.',
    source: PRACTICE,
  },
  yield: {
    term: 'yield',
    says: 'What was obtained over what was weighed in, in per cent.',
    source: GMP,
  },
  lot: {
    term: 'lot',
    also: ['batch number'],
    says: 'A quantity made or delivered in one go, with a number by which it can be traced and recalled.',
    source: GMP,
  },
  'batch-record': {
    term: 'batch record',
    says: 'The sheet on which a batch is weighed, made, checked and released, kept for tracing.',
    source: GMP,
  },
  version: {
    term: 'version',
    says: 'A formula as it was recorded, never changed after. Batches and sheets refer to it.',
    source: GMP,
  },
  preservative: {
    term: 'preservative',
    says: 'A substance that keeps microbes from growing in the product. Anything with water needs one, or a reason why not.',
    source: REGULATION,
  },
  undissociated: {
    term: 'undissociated acid',
    also: ['free acid'],
    says: 'The part of an acid that still holds its hydrogen. Only it passes into microbes, so an acid preservative works at low pH only.',
    source: AULTON,
  },
  'challenge-test': {
    term: 'challenge test',
    also: ['preservation efficacy test', 'PET'],
    says: 'A product is contaminated on purpose and counted for 28 days. It alone shows whether preservation works.',
    source: book('ISO 11930:2019, Cosmetics, Microbiology, Geneva 2019'),
  },
  'stability-study': {
    term: 'stability study',
    says: 'Filled product stored warm, cold, at room temperature and in light, and examined on set dates.',
    source: book(
      'ISO/TR 18811:2018, Cosmetics, Guidelines on the stability testing of cosmetic products, Geneva 2018',
    ),
  },
  q10: {
    term: 'Q10',
    says: 'How many times faster a change runs when it is 10 °C warmer. 2 is an assumption, not a law.',
    source: book('ASTM F1980, accelerated ageing'),
  },
  'freeze-thaw': {
    term: 'freeze–thaw cycle',
    says: 'Freezing and warming in turn, to stress what fears frost: ionic emulsifiers above all.',
    source: PRACTICE,
  },
  'safety-data-sheet': {
    term: 'safety data sheet',
    also: ['SDS', 'MSDS'],
    says: 'The supplier’s sheet on hazards, handling, first aid and spills, in 16 sections.',
    source: book('Regulation (EC) No 1907/2006 (REACH), Annex II, Brussels 2006: check the current text'),
  },
  'safety-assessment': {
    term: 'safety assessment',
    says: 'A qualified person’s signed judgement that a product is safe, required by law before it is sold in many places.',
    source: REGULATION,
  },
  allergen: {
    term: 'declarable allergen',
    also: ['fragrance allergen'],
    says: 'A fragrance substance that the label must name above 0.001 % in leave-on or 0.01 % in rinse-off products.',
    source: REGULATION,
  },
  'leave-on': {
    term: 'leave-on',
    also: ['rinse-off'],
    says: 'A product that stays on the skin; a rinse-off is washed away. Limits are often stricter for leave-on.',
    source: REGULATION,
  },
  'e-mark': {
    term: 'tolerable negative error',
    also: ['TNE', 'e mark'],
    says: 'How much one pack may hold below what its label says, by a table of net contents. The mean must not be below the label.',
    source: book(
      'Council Directive 76/211/EEC on prepackages, Annex I, Brussels 1976: check the current text',
    ),
  },
} as const satisfies Record<string, Term>;
