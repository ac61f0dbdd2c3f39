import { z } from 'zod';
import { currency } from '../quantities/money';
import { lineText, longText } from '../quantities/text';

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
  readabilityMg: z.int().positive().max(1_000_000).default(100),
  /** Extra planned for process loss, in ppm. */
  overagePpm: z.int().min(0).max(500_000).default(0),
  /** How numbers are made: the letters before the running number. */
  formulaPrefix: lineText(12).default('F-'),
  batchPrefix: lineText(12).default('B-'),
  theme: z.enum(THEMES).default('system'),
  /** Who records versions, printed beside them. */
  recordedBy: lineText(120).default(''),
});
export type Settings = z.infer<typeof settings>;
