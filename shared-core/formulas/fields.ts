import { z } from 'zod';
import { blankMarket, market } from '../products/market';
import {
  flag,
  group,
  line,
  name,
  number,
  references,
  rows,
  share,
  text,
  word,
  type Fields,
} from '../record/field';
import { PHASE_COLUMNS, STEP_COLUMNS } from './table-columns';
import { MARKET_FIELDS } from './market-fields';
import { blankProductFile, REPORT_KINDS } from './product-file';
import {
  blankTarget,
  formulaContent,
  PRODUCT_TYPES,
  targetSpecification,
  USES,
  type TargetSpecification,
} from './formula';

const BY_HAND = { form: 'by hand', sheet: 'by hand', compare: 'by hand' } as const;
const inRow = { section: '' };
const { phases, steps, accepted, claims, reports, statements } = formulaContent.shape;

const TARGET_LABELS: Record<keyof TargetSpecification, string> = {
  appearance: 'Appearance',
  odour: 'Odour',
  colour: 'Colour',
  phLow: 'pH from',
  phHigh: 'pH to',
  viscosityLow: 'Viscosity from, mPa·s',
  viscosityHigh: 'Viscosity to, mPa·s',
  viscosityMethod: 'Viscosity, how measured',
  densityLow: 'Density from, g/mL',
  densityHigh: 'Density to, g/mL',
  microbiology: 'Microbiology',
};

const TARGET_FIELDS: Fields = Object.fromEntries(
  Object.entries(TARGET_LABELS).map(([key, label]) => {
    const spec = { label, section: 'target' };
    const isText = typeof blankTarget()[key as keyof TargetSpecification] === 'string';
    return [
      key,
      isText ? line({ ...spec, max: 500 }) : number(z.number().nullable(), { ...spec, min: 0, max: 1e9 }),
    ];
  }),
);

const temperature = { label: 'Temperature', ...inRow, unit: '°C', min: -20, max: 200 };

const LINE_ROW: Fields = {
  id: line({ label: 'Line', ...inRow }),
  materialId: line({ label: 'Material', ...inRow }),
  ppm: share({ label: 'Share', ...inRow }),
  toHundred: flag({ label: 'q.s. to 100 %', ...inRow }),
  note: line({ label: 'Note', ...inRow, max: 300 }),
};

const PHASE_ROW: Fields = {
  id: line({ label: 'Phase', ...inRow }),
  title: line({ label: 'Title', ...inRow, max: 80 }),
  temperatureC: number(z.number().nullable(), temperature),
  lines: rows(LINE_ROW, z.array(z.unknown()), { label: 'Lines', ...inRow }),
};

const STEP_ROW: Fields = {
  id: line({ label: 'Step', ...inRow }),
  phaseIds: references(z.array(z.string()), { label: 'Phases', ...inRow }),
  instruction: text({ label: 'Instruction', ...inRow, max: 2000 }),
  temperatureC: number(z.number().nullable(), temperature),
  speedRpm: number(z.number().nullable(), { label: 'Speed', ...inRow, unit: 'rpm', min: 0, max: 50_000 }),
  minutes: number(z.number().nullable(), { label: 'Time', ...inRow, unit: 'min', min: 0, max: 100_000 }),
  lookFor: line({ label: 'Look for', ...inRow, max: 300 }),
  caution: line({ label: 'Caution', ...inRow, max: 300 }),
};

const ACCEPTED_ROW: Fields = {
  says: line({ label: 'Finding', ...inRow, max: 500 }),
  reason: line({ label: 'Reason', ...inRow, max: 500 }),
  by: line({ label: 'By', ...inRow, max: 120 }),
  on: line({ label: 'On', ...inRow, max: 10 }),
};

const CLAIM_ROW: Fields = {
  says: line({ label: 'Claim', ...inRow, max: 300 }),
  evidence: text({ label: 'Evidence', ...inRow, max: 2000 }),
};

const REPORT_ROW: Fields = {
  kind: word(REPORT_KINDS, 'other', { label: 'Kind', ...inRow }),
  title: line({ label: 'Title', ...inRow }),
  dated: line({ label: 'Its date', ...inRow, max: 10 }),
  validUntil: line({ label: 'Valid until', ...inRow, max: 10 }),
  versionNumber: number(z.number().nullable(), {
    label: 'Of version',
    ...inRow,
    whole: true,
    min: 1,
    max: 1e6,
  }),
};

const STATEMENT_FIELDS: Fields = {
  goodPractice: text({ label: 'Good manufacturing practice', ...inRow, max: 2000 }),
  animalTesting: text({ label: 'Animal testing', ...inRow, max: 2000 }),
};

/** Every property of a formula. Its ledger, procedure and target are drawn by hand. */
export const FORMULA_FIELDS = {
  name: name('the formula’s name', {
    label: 'Name',
    section: 'head',
    places: { ...BY_HAND, list: { rem: 12, grow: 2 }, search: true },
  }),
  code: line({
    label: 'Code',
    section: 'head',
    max: 40,
    places: { ...BY_HAND, list: { rem: 6 }, search: true },
  }),
  productType: word(PRODUCT_TYPES, 'o/w emulsion', {
    label: 'Product type',
    section: 'head',
    places: { ...BY_HAND, list: { rem: 9 }, filter: 'Product type', search: true },
  }),
  use: word(USES, 'leave-on', {
    label: 'Use',
    section: 'head',
    places: { ...BY_HAND, list: { rem: 6 }, filter: 'Use', search: true },
  }),
  purpose: line({
    label: 'Purpose',
    section: 'head',
    max: 500,
    places: { ...BY_HAND, list: { rem: 10, grow: 2 }, search: true },
  }),
  market: group(MARKET_FIELDS, market, blankMarket(), {
    label: 'Product and market',
    section: 'head',
    places: BY_HAND,
  }),
  phases: rows(PHASE_ROW, phases, {
    label: 'Phases and lines',
    section: 'ledger',
    places: BY_HAND,
    columns: PHASE_COLUMNS,
  }),
  steps: rows(STEP_ROW, steps, {
    label: 'Procedure',
    section: 'procedure',
    places: BY_HAND,
    columns: STEP_COLUMNS,
  }),
  target: group(TARGET_FIELDS, targetSpecification, blankTarget(), {
    label: 'Target',
    section: 'target',
    places: BY_HAND,
  }),
  accepted: rows(ACCEPTED_ROW, accepted, { label: 'Accepted findings', section: 'checks', places: BY_HAND }),
  claims: rows(CLAIM_ROW, claims, { label: 'Claims', section: 'file', places: BY_HAND }),
  reports: rows(REPORT_ROW, reports, { label: 'Reports', section: 'file', places: BY_HAND }),
  statements: group(STATEMENT_FIELDS, statements, blankProductFile().statements, {
    label: 'Statements',
    section: 'file',
    places: BY_HAND,
  }),
  notes: text({ label: 'Notes', section: 'notes', places: { ...BY_HAND, search: true } }),
  archived: flag({ label: 'Archived', section: 'head', places: { ...BY_HAND, filter: 'Archived' } }),
};
