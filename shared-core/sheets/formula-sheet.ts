import { formulaCost } from '../costing/formula-cost';
import type { FormulaContent } from '../formulas/formula';
import type { VersionDecision } from '../formulas/decision';
import { ingredientList, type ListOptions } from '../labelling/ingredient-list';
import { allergenRuleOn } from '../labelling/allergens';
import { NO_LAW, type Law } from '../limits/law';
import { formatDate } from '../locale/dates';
import type { Region } from '../locale/numbers';
import { regionText } from '../locale/readable';
import { formatMoney } from '../locale/money';
import type { Material } from '../materials/material';
import { formulaCautions } from './cautions';
import { decisionFacts, withdrawnCaution } from './decision-words';
import { formulaTables } from './formula-lines';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { factList } from './kit/facts';
import { contentWidth, sheet } from './kit/page';
import type { SheetFrame, SheetSettings } from './kit/page';
import { headed } from './kit/tables';
import { heading, keptTogether, numberText, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { procedureTable } from './procedure';
import { forSharing, sheetName, type MaterialsById } from './sharing';
import { targetFacts } from './target-words';
import { capital } from '../locale/words';

/** A recorded version, or the draft as it stands. */
export interface PrintedFormula {
  content: FormulaContent;
  materials: MaterialsById;
  /** The library's substances and limits, for the names of the label. */
  law?: Law;
  /** Null for a draft. */
  version: {
    number: number;
    recordedAt: string;
    recordedBy: string;
    reason: string;
    /** What was decided on it, oldest first. */
    decisions?: readonly VersionDecision[];
  } | null;
}

export interface FormulaSheetOptions {
  /** Without cost, suppliers and notes. */
  forSharing: boolean;
  /** Trade names as well as INCI names; a full sheet always has them. */
  tradeNames: boolean;
}

function costSection(formula: PrintedFormula, settings: SheetSettings): SheetNode[] {
  const { currency, languageRegion } = settings;
  const cost = formulaCost(formula.content, formula.materials, currency, languageRegion);
  const known = cost.coveredPpm > 0;
  const elsewhere = cost.gaps.some((gap) => gap.reason === 'priced in another currency');
  return [
    keptTogether(
      heading('Cost of raw materials'),
      known
        ? paragraph(`${formatMoney(cost.perKgMinor, currency, languageRegion)} per kg`, { bold: true })
        : paragraph(`Not computed: no material has a price in ${currency}.`, { bold: true }),
      ...cost.worked.cautions.map(remark),
      ...(elsewhere
        ? [
            remark(
              `Prices are never converted: add offers in ${currency}, or choose their currency in the settings.`,
            ),
          ]
        : []),
    ),
  ];
}

function ingredientSection(
  content: FormulaContent,
  materials: MaterialsById,
  options: Pick<ListOptions, 'law' | 'allergens' | 'nameOf'>,
): SheetNode[] {
  const list = ingredientList(content, materials, { ...options, form: 'EU' });
  if (list.ingredients.length === 0) return [];
  return [
    heading('Ingredient list (EU form)'),
    paragraph(
      [
        ...list.ingredients.map((one) => `${one.name}${one.estimated ? ' (est.)' : ''}`),
        ...(list.mayContain.length > 0 ? [`+/− ${list.mayContain.join(', ')}`] : []),
      ].join(', '),
    ),
    remark(list.notes.join(' ')),
  ];
}

/** Findings that were let stand, with the reason of whoever did: they hold for this version. */
function acceptedSection({ accepted }: FormulaContent, region: Region): SheetNode[] {
  if (accepted.length === 0) return [];
  const told = accepted.map(({ says, reason, by, on }) =>
    paragraph(
      `${regionText(says, region)}. Accepted${by ? ` by ${by}` : ''} on ${formatDate(on, region)}: ${reason}`,
    ),
  );
  return headed('Findings accepted', ...told);
}

/**
 * A formula on paper: full, or for sharing without cost, suppliers and notes, with or without trade names.
 * @param printedAt ISO 8601
 */
export function formulaSheet(
  formula: PrintedFormula,
  options: FormulaSheetOptions,
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const tradeNames = options.tradeNames || !options.forSharing;
  const { materials, version } = formula;
  const content = options.forSharing ? forSharing(formula.content, materials, tradeNames) : formula.content;
  const versionName = version ? `version ${version.number}` : 'draft';
  const frame: SheetFrame = {
    kind: 'Formula',
    title: content.name,
    number: [content.code, versionName].filter(Boolean).join(', '),
    settings,
    printedAt,
  };
  const target = factList(targetFacts(content.target, region), width);
  const nameOf = (material: Material): string => sheetName(material, tradeNames);
  // By the formula's own notes: those stay behind when it is shared, what they say of its proof does not.
  const cautions = formulaCautions({ ...content, notes: formula.content.notes }, materials, nameOf);
  return sheet(frame, [
    ...titleBlock(
      frame,
      [
        { label: 'Code', value: content.code ? numberText(content.code) : '' },
        { label: 'Version', value: version ? String(version.number) : 'Draft, not recorded' },
        { label: 'Recorded', value: version ? formatDate(version.recordedAt, region) : '' },
        { label: 'By', value: options.forSharing ? '' : (version?.recordedBy ?? '') },
        ...(options.forSharing ? [] : decisionFacts(version, region)),
        { label: 'Type', value: capital(content.productType) },
        { label: 'Use', value: capital(content.use) },
      ],
      content.purpose,
    ),
    ...cautionBox(withdrawnCaution(version, region, options.forSharing), width),
    ...headed(
      'Formula',
      ...formulaTables(content, materials, region, width, { tradeNames, supplier: !options.forSharing }),
    ),
    ...cautionBox(cautions, width),
    ...(content.steps.length > 0 ? headed('Procedure', procedureTable(content, region, width)) : []),
    ...(target ? [keptTogether(heading('Target specification'), target)] : []),
    ...ingredientSection(content, materials, {
      law: formula.law ?? NO_LAW,
      allergens: allergenRuleOn(printedAt.slice(0, 10)),
      nameOf,
    }),
    ...(options.forSharing ? [] : costSection(formula, settings)),
    ...(options.forSharing ? [] : acceptedSection(content, region)),
    ...(content.notes ? [heading('Notes'), paragraph(content.notes)] : []),
  ]);
}
