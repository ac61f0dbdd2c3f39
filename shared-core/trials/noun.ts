import { z } from 'zod';
import { line, name, number, rows, share, text, type Fields } from '../record/field';
import type { Noun } from '../record/noun';
import { trialSeries, type TrialSeries } from './trial-series';

const BY_HAND = { form: 'by hand', sheet: 'by hand', compare: 'by hand' } as const;
const inRow = { section: '' };
const whole = { whole: true, min: 0, max: 1e13 };
const { shape } = trialSeries;

const TRIAL_ROW: Fields = {
  label: name('the trial’s label', { label: 'Trial', ...inRow, max: 60 }),
  hlb: number(z.number().nullable(), { label: 'HLB', ...inRow, min: 0, max: 40 }),
  levelPpm: share({ label: 'Emulsifiers together', ...inRow }),
  result: text({ label: 'Observations', ...inRow, max: 4000 }),
};

/** Every property of a trial series beyond what every record has. */
export const TRIAL_SERIES_FIELDS = {
  title: name('the series’ title', {
    label: 'Title',
    section: 'head',
    places: { ...BY_HAND, list: { rem: 12, grow: 2 }, search: true },
  }),
  // An identifier, which says nothing in a table.
  formulaId: line({ label: 'Made for', section: 'head', max: 36, places: BY_HAND, columns: [] }),
  targetHlb: number(z.number().nullable(), {
    label: 'Target HLB',
    section: 'head',
    digits: 1,
    min: 0,
    max: 40,
    places: BY_HAND,
  }),
  batchMg: number(shape.batchMg, { label: 'Each batch', section: 'head', ...whole, places: BY_HAND }),
  readabilityMg: number(shape.readabilityMg, {
    label: 'Balance readability',
    section: 'head',
    ...whole,
    places: BY_HAND,
  }),
  trials: rows(TRIAL_ROW, shape.trials, { label: 'Trials', section: 'trials', places: BY_HAND }),
  chosen: number(z.int().nullable(), { label: 'Chosen trial', section: 'trials', ...whole, places: BY_HAND }),
  notes: text({ label: 'Notes', section: 'notes', places: { ...BY_HAND, search: true } }),
};

/** What a series' history holds. */
export type SeriesContent = Omit<TrialSeries, 'id' | 'createdAt'>;

const seriesContent = z.object(shape).omit({ id: true, createdAt: true });

export const TRIAL_SERIES: Noun<SeriesContent> = {
  kind: 'trial series',
  name: 'trial series',
  fields: TRIAL_SERIES_FIELDS,
  read: (content) => seriesContent.parse(content),
  titleOf: ({ title }) => title,
  upgraders: [],
};
