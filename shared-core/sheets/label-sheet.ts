import type { AllergenRule } from '../labelling/allergens';
import { ingredientList, type IngredientGroup, type IngredientList } from '../labelling/ingredient-list';
import { labelPhrases, type LabelPhrase } from '../labelling/phrases';
import { LABEL_FORM_NAMES, type LabelForm } from '../labelling/substance-names';
import { lawOfFormula } from '../limits/in-formula';
import type { Judged } from '../limits/judged';
import { NO_ADVICE, NO_LAW } from '../limits/law';
import { regionsOf } from '../limits/situation';
import { allowanceWords, productsWords, subjectWords, totalWords } from '../limits/words';
import { formatShare, type Region } from '../locale/numbers';
import { dayWords } from '../locale/dates';
import { regionText } from '../locale/readable';
import { capital, joined } from '../locale/words';
import { neverMade } from './cautions';
import { decisionFacts, withdrawnCaution } from './decision-words';
import type { PrintedFormula } from './formula-sheet';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { onDecimal } from './kit/on-decimal';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from './kit/page';
import { headed, ruledTable } from './kit/tables';
import { heading, numberText, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE } from './kit/type-scale';

export interface LabelSheetOptions {
  form: LabelForm;
  allergens: AllergenRule;
}

const GROUPS: Record<IngredientGroup, string> = {
  active: 'active of a drug, first',
  'by weight': '',
  'any order': 'any order',
  colorant: 'colorant, last',
};

const VERDICTS: Record<Judged['verdict'], string> = {
  within: 'within',
  above: 'ABOVE',
  'may be above': 'MAY BE ABOVE',
  'below least': 'less than the least',
  notice: 'notice',
  'cannot tell': 'cannot be judged',
};

const cell = (text: string): SheetNode => ({ text, fontSize: SIZE.table });

function verdictText({ verdict, limit, time, certain, forbiddenTo, ph }: Judged, region: Region): string {
  return [
    limit.rule === 'prohibited' ? 'NOT ALLOWED' : VERDICTS[verdict],
    forbiddenTo.length > 0 ? `not for ${joined(forbiddenTo)}` : '',
    ph === 'outside' ? 'another pH' : '',
    time === 'coming' ? `coming, from ${dayWords(limit.from, region)}` : '',
    certain ? '' : 'if of such a kind',
  ]
    .filter((part) => part !== '')
    .join('; ');
}

function limitsTable(judged: readonly Judged[], region: Region, width: number): SheetNode[] {
  if (judged.length === 0)
    return [paragraph('No limit of the library’s table is about anything in this formula.')];
  return [
    ruledTable({
      width,
      columns: [
        { head: 'Substance or group', share: 22 },
        { head: 'Comes to', share: 17 },
        { head: 'Limit', share: 17 },
        { head: 'Verdict', share: 13 },
        { head: 'Text; for', share: 31 },
      ],
      rows: judged.map((one) => [
        cell(subjectWords(one)),
        cell(regionText(totalWords(one), region)),
        cell(regionText(`${allowanceWords(one.limit)} (${one.region})`, region)),
        cell(verdictText(one, region)),
        cell(`${one.limit.source}; ${productsWords(one.limit)}. ${capital(one.limit.checked)}.`),
      ]),
    }),
  ];
}

/** The words that limits ask of the label. */
function wordsSection(phrases: readonly LabelPhrase[]): SheetNode[] {
  return phrases.length > 0
    ? [
        heading('Words that the label must carry'),
        ...phrases.map(({ text, because, open }) =>
          paragraph(`“${text}” (${joined(because)}${open ? '; not certain yet' : ''})`),
        ),
      ]
    : [];
}

/** What each name of the list comes to. */
function contentSection(list: IngredientList, region: Region, width: number): SheetNode[] {
  const shares = onDecimal(
    list.ingredients.map(({ estimated, ppm }) => `${estimated ? '≈ ' : ''}${formatShare(ppm, region)}`),
    region,
  );
  return list.ingredients.length > 0
    ? headed(
        'What each name comes to',
        ruledTable({
          width,
          columns: [
            { head: 'Ingredient', share: 56 },
            { head: '% of the product', share: 18, alignment: 'right' },
            { head: 'Remarks', share: 26 },
          ],
          rows: list.ingredients.map((one, row) => [
            cell(one.name),
            shares[row] ?? cell(''),
            cell(
              [GROUPS[one.group], one.allergen ? 'allergen' : '', one.known ? '' : 'free text']
                .filter(Boolean)
                .join(', '),
            ),
          ]),
        }),
        remark(list.notes.join(' ')),
      )
    : [];
}

/**
 * The label of a formula on paper: its ingredient list, the words that limits ask for, what each name comes to, and
 * the limits that it was held against.
 * @param printedAt ISO 8601; the day that is asked about
 */
export function labelSheet(
  formula: PrintedFormula,
  { form, allergens }: LabelSheetOptions,
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const { content, materials, version, law = NO_LAW } = formula;
  const versionName = version ? `version ${version.number}` : 'draft';
  const frame: SheetFrame = {
    kind: 'Label and law',
    title: content.name,
    number: [content.code, versionName].filter(Boolean).join(', '),
    settings,
    printedAt,
  };
  const list = ingredientList(content, materials, { form, law, allergens });
  const { judged, contents } = lawOfFormula(content, (id) => materials[id], law, printedAt.slice(0, 10));
  const { market } = content;
  return sheet(frame, [
    ...titleBlock(
      frame,
      [
        { label: 'Code', value: content.code ? numberText(content.code) : '' },
        { label: 'Version', value: version ? String(version.number) : 'Draft, not recorded' },
        ...decisionFacts(version, region),
        { label: 'Kind', value: capital(market.kind ?? 'not stated') },
        { label: 'Use', value: capital(content.use) },
        { label: 'Checked against', value: joined(regionsOf(market)) },
        { label: 'Form', value: LABEL_FORM_NAMES[form] },
      ],
      content.purpose,
    ),
    ...cautionBox([...withdrawnCaution(version, region), ...neverMade(content)], width),
    ...headed('Ingredient list', paragraph(list.text || 'No ingredients yet.', { fontSize: SIZE.section })),
    ...wordsSection(labelPhrases(judged)),
    ...contentSection(list, region, width),
    ...headed('Limits of law', ...limitsTable(judged, region, width)),
    ...(contents.freeText.length > 0
      ? [
          remark(
            `Free text, counted against no limit: ${joined(contents.freeText.map(({ written }) => written))}.`,
          ),
        ]
      : []),
    remark(NO_ADVICE),
  ]);
}
