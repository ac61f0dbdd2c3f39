import { judgedFindings } from '../checks/accepted';
import { checkFormula } from '../checks/all';
import type { CheckChoices, Finding } from '../checks/check';
import { allergenRuleOn } from '../labelling/allergens';
import { labelFormsOf } from '../labelling/forms';
import { ingredientList } from '../labelling/ingredient-list';
import { labelPhrases } from '../labelling/phrases';
import type { LabelForm } from '../labelling/substance-names';
import { lawOfFormula } from '../limits/in-formula';
import type { Law } from '../limits/law';
import type { Laws } from '../limits/law-changes';
import type { Material } from '../materials/material';
import type { FormulaContent } from './formula';

/** Two days that a version is held against: its own, and another; ISO 8601. */
export interface Days {
  then: string;
  now: string;
}

/** A version as it was recorded, with its materials of that day. */
export interface RecordedVersion {
  content: FormulaContent;
  materials: ReadonlyMap<string, Material>;
}

/** What the checks find of a version on both days, and on one of them alone; what its maker accepted is left out. */
export interface FindingsThenAndNow {
  both: Finding[];
  onlyThen: Finding[];
  onlyNow: Finding[];
}

const keyOf = ({ ruleId, severity, title, lines }: Finding): string =>
  [ruleId, severity, title, ...lines].join('\n');

/** Runs every check on a version with the law of its day, as the library held it then, and with that of another. */
export function findingsThenAndNow(
  { content, materials }: RecordedVersion,
  laws: Laws,
  { then, now }: Days,
  choices: CheckChoices,
): FindingsThenAndNow {
  const openOn = (law: Law, onDay: string): Finding[] =>
    judgedFindings(checkFormula({ content, materials, law, onDay }, choices), content).open;
  const [before, after] = [openOn(laws.then, then), openOn(laws.now, now)];
  const [keysThen, keysNow] = [new Set(before.map(keyOf)), new Set(after.map(keyOf))];
  return {
    both: after.filter((one) => keysThen.has(keyOf(one))),
    onlyThen: before.filter((one) => !keysNow.has(keyOf(one))),
    onlyNow: after.filter((one) => !keysThen.has(keyOf(one))),
  };
}

/** What stands on a label of one form on a day: the list, and the words that the law asks for. */
export interface LabelOfDay {
  text: string;
  words: string[];
}

/** A label as it was to be on the day of the version, and as it is to be on another. */
export interface LabelThenAndNow {
  form: LabelForm;
  then: LabelOfDay;
  now: LabelOfDay;
  same: boolean;
}

/** The labels of a version, by the rules of its day and of another: allergens by the list in force, words as the limits had them. */
export function labelsThenAndNow(
  { content, materials }: RecordedVersion,
  laws: Laws,
  { then, now }: Days,
): LabelThenAndNow[] {
  const labelOn = (form: LabelForm, law: Law, onDay: string): LabelOfDay => {
    const { judged } = lawOfFormula(content, (id) => materials.get(id), law, onDay);
    const own = judged.filter(({ region }) => (form === 'US') === (region === 'US'));
    const allergens = allergenRuleOn(onDay);
    return {
      text: ingredientList(content, Object.fromEntries(materials), { form, law, allergens }).text,
      words: labelPhrases(own.filter(({ time }) => time === 'in force')).map(({ text }) => text),
    };
  };
  return labelFormsOf(content.market).map((form) => {
    const [before, after] = [labelOn(form, laws.then, then), labelOn(form, laws.now, now)];
    const same = before.text === after.text && before.words.join('\n') === after.words.join('\n');
    return { form, then: before, now: after, same };
  });
}
