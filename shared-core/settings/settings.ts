import { z } from 'zod';
import { currency } from '../quantities/money';
import { sharePpm } from '../quantities/share';
import { beginningText, lineText, longText } from '../quantities/text';

export const LANGUAGE_REGIONS = [
  'en-GB',
  'en-US',
  'de-DE',
  'fr-FR',
  'es-ES',
  'it-IT',
  'nl-NL',
  'pl-PL',
  'sv-SE',
  'pt-BR',
  'de-CH',
  'en-IN',
] as const;
export const PAPER_SIZES = ['A4', 'LETTER'] as const;
export const THEMES = ['system', 'light', 'dark'] as const;

/** A library's settings. Each has a default, so that nothing must be set before the first sheet. */
export const settings = z.object({
  makerName: lineText(200).default(''),
  makerAddress: longText(500).default(''),
  languageRegion: z.enum(LANGUAGE_REGIONS).default('en-GB'),
  paperSize: z.enum(PAPER_SIZES).default('A4'),
  currency: currency.default('EUR'),
  /** What the balance can read, in mg; 100 = 0.1 g. */
  readabilityMg: z
    .int('A readability of less than a milligram cannot be entered.')
    .positive('A readability is above zero.')
    .max(1_000_000, 'A step above 1 kg is no use for weighing.')
    .default(100),
  /** Extra planned for process loss, in ppm. */
  overagePpm: sharePpm.max(500_000, 'An overage above 50 % makes a different batch size.').default(0),
  /** How numbers are made: what stands before the running number, with the space it may end in (“LOT 001”). */
  formulaPrefix: beginningText(12).default('F-'),
  batchPrefix: beginningText(12).default('B-'),
  /** Checks of formulas that are switched off, by their ids. */
  checksOff: z.array(lineText(60)).max(200).default([]),
  /** Thresholds of checks that the maker has set, ppm of the formula, by the check’s id. */
  checkThresholds: z.record(lineText(60), sharePpm).default({}),
  /** What the words of a maker’s tables mean, by what they fill; an empty one is left out. */
  tableWords: z.record(z.string().max(60), z.record(z.string().max(300), z.string().max(60))).default({}),
  theme: z.enum(THEMES).default('system'),
  /** Who records versions, printed beside them. */
  recordedBy: lineText(120).default(''),
  /** The day on which a backup was last opened and compared with the library, ISO 8601; empty for never. */
  backupTriedOn: lineText(10).default(''),
});
export type Settings = z.infer<typeof settings>;
