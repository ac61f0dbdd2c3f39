import type { Material } from '../materials/material';
import type { Region } from '../locale/numbers';
import { NOT_PROOF } from './cautions';
import { comparisonRows } from './comparison-rows';
import type { Cell, SheetDefinition, SheetNode } from './kit/definition';
import { contentWidth, sheet, shortened } from './kit/page';
import type { SheetFrame, SheetSettings } from './kit/page';
import { cell, columnWidths, figureCell, PADDING, ruledTable } from './kit/tables';
import type { Column } from './kit/tables';
import { remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE, SOFT_INK } from './kit/type-scale';
import { bestUse } from '../materials/best-use';
import { figureWords, inciWords } from '../materials/words';
import { looksNode } from './form-picture';
import type { SheetPhoto } from './photo';
import { capital } from '../locale/words';

/** Up to this many stand side by side; more become a list. */
export const SIDE_BY_SIDE = 6;

/** Photos by material id. */
export type Photos = Readonly<Record<string, SheetPhoto | undefined>>;

const KEY =
  '≠ and heavy type: they differ.   = alike.   No sign: not recorded of all.   No hazard named: read its safety data sheet.';
const FIGURES = 'Figures are those recorded in this library; published HLBs differ by 1 to 2 units.';

/** Points above and below a row of four materials and more, so that as many as may stand side by side fit on a page. */
const CLOSE = 1.5;

/** The height of a drawing among others, in points. */
const DRAWN = 30;
const SIGNS = { differ: '≠', alike: '=', open: '' } as const;

function sideColumns(materials: readonly Material[]): Column[] {
  return [
    { head: '', share: 16 },
    { head: '', share: 3, alignment: 'center' },
    ...materials.map((one) => ({ head: shortened(one.tradeName, 80), share: 81 / materials.length })),
  ];
}

function photoRow(materials: readonly Material[], photos: Photos, widths: number[]): Cell[][] {
  const pictured = materials.some((one) => photos[one.id]);
  // Six fill the page as they are; their forms are told in words.
  const drawn = materials.length < SIDE_BY_SIDE && materials.some((one) => one.form);
  if (!pictured && !drawn) return [];
  const cells = materials.map((one, index): Cell => {
    const photo = photos[one.id];
    const wide = widths[index + 2] ?? 60;
    return looksNode(photo, one, wide, pictured ? 80 : DRAWN) ?? cell('not recorded', { color: SOFT_INK });
  });
  return [[cell('Looks'), cell(''), ...cells]];
}

function sideBySide(
  materials: readonly Material[],
  photos: Photos,
  region: Region,
  width: number,
): SheetNode[] {
  const columns = sideColumns(materials);
  const rows = comparisonRows(materials, region).map((row): Cell[] => [
    cell(row.label, { bold: row.outcome === 'differ' }),
    cell(SIGNS[row.outcome], { alignment: 'center', bold: row.outcome === 'differ' }),
    ...row.values.map((value) =>
      value === ''
        ? cell('not recorded', { color: SOFT_INK, italics: true })
        : cell(value, { bold: row.outcome === 'differ' }),
    ),
  ]);
  const table = ruledTable({
    columns,
    width,
    padding: materials.length > 3 ? CLOSE : undefined,
    rows: [...photoRow(materials, photos, columnWidths(columns, width)), ...rows],
  });
  // The head holds the names, so it is set larger than the head of a table of figures.
  for (const head of table.table.body[0] ?? [])
    if ('text' in head) Object.assign(head, { fontSize: SIZE.body, color: undefined });
  return [remark(KEY), table];
}

function classList(
  materials: readonly Material[],
  photos: Photos,
  region: Region,
  width: number,
): SheetNode[] {
  const pictured = materials.some((one) => photos[one.id] || one.form);
  const columns: Column[] = [
    ...(pictured ? [{ head: 'Looks', share: 9 }] : []),
    { head: 'Raw material', share: 18 },
    { head: 'INCI', share: 24 },
    { head: 'Charge', share: 9 },
    { head: 'Form', share: 11 },
    { head: 'Type', share: 7 },
    { head: 'HLB', share: 12, alignment: 'right' },
    { head: 'Best use', share: 23 },
  ];
  const photoWidth = pictured ? (9 / 113) * width - PADDING : 0;
  const rows = materials.map((one): Cell[] => {
    const photo = photos[one.id];
    return [
      ...(pictured ? [looksNode(photo, one, photoWidth, photo ? 42 : DRAWN) ?? cell('')] : []),
      cell(one.tradeName, { bold: true }),
      cell(inciWords(one, 8), { fontSize: SIZE.small }),
      cell(capital(one.charge ?? '–')),
      cell(capital([one.form, one.consistency].filter(Boolean).join(', '))),
      cell(one.emulsionType === 'both' ? 'o/w, w/o' : (one.emulsionType ?? '')),
      figureCell(figureWords('hlb', one.figures.hlb, region)),
      cell(bestUse(one, region), { fontSize: SIZE.small }),
    ];
  });
  return [ruledTable({ columns, rows, width })];
}

/**
 * A hand-out that sets materials beside each other: up to six in columns with differences marked, more as a list.
 * @param photos by material id; materials without one go without
 * @param printedAt ISO 8601
 */
export function comparisonSheet(
  materials: readonly Material[],
  settings: SheetSettings,
  printedAt: string,
  photos: Photos = {},
): SheetDefinition {
  const region = settings.languageRegion;
  const orientation = materials.length > 3 ? 'landscape' : 'portrait';
  const width = contentWidth(settings.paperSize, orientation);
  const frame: SheetFrame = {
    kind: 'Comparison hand-out',
    title:
      materials.length <= 3 ? materials.map((one) => one.tradeName).join(' · ') : 'Raw materials compared',
    number: `${materials.length} raw materials`,
    settings,
    printedAt,
    orientation,
  };
  const body =
    materials.length <= SIDE_BY_SIDE
      ? sideBySide(materials, photos, region, width)
      : classList(materials, photos, region, width);
  return sheet(frame, [
    ...titleBlock(frame, []),
    // Above the table: below it, they could be all that stands on a page.
    remark(`${FIGURES} ${NOT_PROOF}`),
    ...body,
  ]);
}
