import { z } from 'zod';
import { USES } from '../formulas/formula';
import { LIMIT_KINDS, REGIONS, USERS } from '../products/product-kinds';
import { dayText } from '../quantities/day-text';
import { line, name, number, text, word, wordOrNone, words } from '../record/field';

/** The parts of a limit's form and sheet, in their order. */
export const LIMIT_SECTIONS = {
  subject: 'What it is about',
  limit: 'What it asks',
  products: 'For which products',
  label: 'On the label',
  source: 'Where it comes from',
} as const;

/** What a limit asks: at most or less than a share, not at all, an active between two shares, or only a notice. */
export const LIMIT_RULES = ['at most', 'less than', 'prohibited', 'range of the active', 'notice'] as const;
/** How the substances of a group are counted. */
export const COUNTINGS = ['each by itself', 'together', 'by shares of their limits'] as const;
export const NANO_FORMS = ['any form', 'nano only', 'not nano'] as const;
/** For what it is in the product, where the law tells uses of one substance apart. */
export const PURPOSES = [
  'preservative',
  'uv filter',
  'colorant',
  'fragrance',
  'other than preservative',
] as const;
export const HANDS = ['general public', 'professional use'] as const;
/** Law, or advice such as an opinion of scientists, which does not bind. */
export const STANDINGS = ['law', 'advice, not law'] as const;
/** The mark of the examples that come with Stillroom. */
export const EXAMPLE = 'example: check the current law';
export const CHECKINGS = ['not checked yet', EXAMPLE, 'checked'] as const;

const percent = (what: string) =>
  z
    .number(`Write ${what} as a number of per cent.`)
    .min(0, 'A limit cannot be negative.')
    .max(100, 'A limit cannot be above 100 %.')
    .nullable();
const ph = z
  .number('Write the pH as a number.')
  .min(0, 'pH runs from 0 to 14.')
  .max(14, 'pH runs from 0 to 14.');

const SHARE = { unit: '% of the product', digits: 7, min: 0, max: 100 } as const;
const day = (label: string, column: string, hint?: string) =>
  line({ label, section: 'source', column, max: 10, entered: dayText, placeholder: '2026-07-31', hint });

/** Every property of a limit, in the order in which its form shows them. */
export const LIMIT_FIELDS = {
  subject: name('the substance or group', {
    label: 'Substance or group',
    section: 'subject',
    max: 300,
    places: { list: { title: 'Substance or group', rem: 12, grow: 2 }, search: true },
  }),
  of: word(['substance', 'group'], 'substance', {
    label: 'That is',
    section: 'subject',
    column: 'subject_kind',
    names: { substance: 'one substance', group: 'a group of substances' },
    places: { filter: 'About' },
  }),
  purpose: wordOrNone(PURPOSES, 'whatever it is for', {
    label: 'In the product as',
    section: 'subject',
    places: { filter: 'In the product as' },
  }),
  nanoForm: word(NANO_FORMS, 'any form', { label: 'Form', section: 'subject' }),
  rule: word(LIMIT_RULES, 'at most', {
    label: 'Rule',
    section: 'limit',
    places: { list: { title: 'Rule', rem: 6 }, filter: 'Rule' },
  }),
  percent: number(percent('the limit'), { label: 'Limit', section: 'limit', ...SHARE }),
  minPercent: number(percent('the least'), {
    label: 'Least, of an active',
    section: 'limit',
    column: 'min_percent',
    ...SHARE,
  }),
  expressedAs: line({
    label: 'Counted as',
    section: 'limit',
    max: 300,
    placeholder: 'Benzoic Acid',
    hint: 'A substance of the table, such as the acid of a salt; empty for the substance as it is.',
    places: { list: { title: 'As', rem: 7 }, search: true },
  }),
  counting: word(COUNTINGS, 'each by itself', { label: 'The substances of a group', section: 'limit' }),
  phLow: number(ph.nullable(), { label: 'pH from', section: 'limit', column: 'ph_low', min: 0, max: 14 }),
  phHigh: number(ph.nullable(), { label: 'pH to', section: 'limit', column: 'ph_high', min: 0, max: 14 }),
  condition: text({
    label: 'Conditions, as the text gives them',
    section: 'limit',
    max: 2000,
    places: { search: true },
  }),
  regions: words(REGIONS, {
    label: 'Region',
    section: 'products',
    column: 'region',
    places: { list: { title: 'Region', rem: 6 }, filter: 'Region' },
  }),
  use: wordOrNone(USES, 'leave-on and rinse-off', {
    label: 'Use',
    section: 'products',
    places: { list: { title: 'Use', rem: 6 }, filter: 'Use' },
  }),
  kinds: words(LIMIT_KINDS, {
    label: 'Only for',
    section: 'products',
    column: 'kind',
    places: { list: { title: 'Only for', rem: 8, grow: 1 }, filter: 'Only for' },
  }),
  exceptKinds: words(LIMIT_KINDS, { label: 'Not for', section: 'products', column: 'not for' }),
  hands: wordOrNone(HANDS, 'everyone', { label: 'For', section: 'products' }),
  notForUsers: words(USERS, {
    label: 'Must not be used by',
    section: 'products',
    column: 'not for users',
    places: { filter: 'Must not be used by' },
  }),
  labelPhrase: line({
    label: 'Words that the label must carry',
    section: 'label',
    max: 500,
    places: { search: true },
  }),
  phraseAbove: number(percent('the share'), { label: 'Above', section: 'label', ...SHARE }),
  standing: word(STANDINGS, 'law', {
    label: 'Standing',
    section: 'source',
    places: { list: { title: 'Standing', rem: 6 }, filter: 'Standing' },
  }),
  source: name('the text that it comes from', {
    label: 'Text and entry',
    section: 'source',
    max: 500,
    placeholder: 'Regulation (EC) No 1223/2009, Annex V, entry 1',
    places: { list: { title: 'Text', rem: 9, grow: 1 }, search: true },
  }),
  asOf: line({
    label: 'State of the text',
    section: 'source',
    max: 200,
    placeholder: 'as read on 2026-07-31',
  }),
  from: day('Holds from', 'holds_from', 'For products put on the market for the first time.'),
  fromOnShelf: day('For those already on the market from', 'from_on_shelf'),
  until: day('Holds until', 'holds_until'),
  checked: word(CHECKINGS, 'not checked yet', {
    label: 'Checked',
    section: 'source',
    places: { list: { title: 'Checked', rem: 7 }, filter: 'Checked' },
  }),
  notes: text({ label: 'Notes', section: 'source', places: { search: true } }),
};
