import { line, name, number, share, word } from '../record/field';
import { filedPaper } from './document';
import { offer } from './offer';
import { DOCUMENT_KINDS } from './vocabulary';

/** The rows of a material's lists: what each holds. A row belongs to its list's section. */
const inRow = { section: '' };

export const COMPOSITION_ROW = {
  inci: name('the INCI name', { label: 'INCI name', ...inRow, max: 300 }),
  lowPpm: share({ label: '% from', ...inRow }),
  highPpm: share({ label: '% to', ...inRow }),
};

export const ALLERGEN_ROW = {
  inci: name('the allergen', { label: 'Allergen contained', ...inRow }),
  ppm: share({ label: '% of the material', ...inRow }),
};

export const OFFER_ROW = {
  supplier: name('the supplier', { label: 'Supplier', ...inRow }),
  itemCode: line({ label: 'Item code', ...inRow, max: 60 }),
  packMg: number(offer.shape.packMg, { label: 'Pack', ...inRow, whole: true, min: 1, max: 1e12 }),
  priceMinor: number(offer.shape.priceMinor, {
    label: 'Price',
    ...inRow,
    whole: true,
    min: 0,
    max: 1e12,
  }),
  currency: line({ label: 'Currency', ...inRow, max: 3 }),
  date: line({ label: 'Date', ...inRow, max: 10 }),
};

export const DOCUMENT_ROW = {
  kind: word(DOCUMENT_KINDS, 'other', { label: 'Kind', ...inRow }),
  title: name('the document’s title', { label: 'Title', ...inRow }),
  dated: line({ label: 'Date', ...inRow, max: 10 }),
  validUntil: line({ label: 'Valid until', ...inRow, max: 10 }),
  sha256: line({ label: 'File', ...inRow, max: 64 }),
  mediaType: line({ label: 'File type', ...inRow, max: 100 }),
  bytes: number(filedPaper.shape.bytes, {
    label: 'Size',
    ...inRow,
    whole: true,
    min: 1,
    max: 1e12,
  }),
};
