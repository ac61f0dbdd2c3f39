import { blankContent, type Field, type Fields } from '../record/field';
import type { Noun } from '../record/noun';
import { settings, type Settings } from './settings';

/** What each setting is called in its history; the settings page draws them by hand. */
const LABELS: Record<keyof Settings, string> = {
  makerName: 'Maker’s name',
  makerAddress: 'Maker’s address',
  languageRegion: 'Language and region',
  paperSize: 'Paper',
  currency: 'Currency',
  readabilityMg: 'Balance readability',
  overagePpm: 'Overage',
  formulaPrefix: 'Formula codes begin with',
  batchPrefix: 'Batch numbers begin with',
  checksOff: 'Checks switched off',
  checkThresholds: 'Thresholds of checks',
  tableWords: 'Words of tables',
  theme: 'Colours',
  recordedBy: 'Recorded by',
  backupTriedOn: 'Backup last tried on',
};

const usual = settings.parse({});

const SETTING_FIELDS: Fields = Object.fromEntries(
  Object.entries(LABELS).map(([key, label]): [string, Field] => [
    key,
    {
      label,
      section: 'settings',
      shape: { kind: 'line', max: 500 },
      stored: settings.shape[key as keyof Settings],
      entered: settings.shape[key as keyof Settings],
      blank: usual[key as keyof Settings],
      places: { form: 'by hand', sheet: 'no', compare: 'no' },
    },
  ]),
);

export const SETTINGS: Noun<Settings> = {
  kind: 'settings',
  name: 'settings',
  fields: SETTING_FIELDS,
  read: (content) => settings.parse({ ...blankContent(SETTING_FIELDS), ...(content as object) }),
  titleOf: () => 'Settings',
  upgraders: [],
};
