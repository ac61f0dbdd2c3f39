import { newestOffer } from '../costing/offers';
import { phaseLetter } from '../formulas/formula';
import type { FormulaContent, FormulaLine, FormulaPhase } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import { formatNumber, formatShare, shareDigits } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import type { Material } from '../materials/material';
import type { Cell, SheetNode } from './kit/definition';
import { cell, figureCell, ruledTable, wholeTable } from './kit/tables';
import type { Column } from './kit/tables';
import { SIZE, SOFT_INK } from './kit/type-scale';
import { inciWords } from '../materials/words';
import { sheetName, type MaterialsById } from './sharing';

/** What is printed for a line whose material has left the library. */
export const NO_MATERIAL = 'Material no longer in the library';

/** Which columns a formula sheet shows. */
export interface LineColumns {
  tradeNames: boolean;
  supplier: boolean;
}

/** "A   Water phase · 75 °C", with the phase's share or mass at the right. */
export function phaseCaption(phase: FormulaPhase, index: number, region: Region, right: string): SheetNode {
  const heat = phase.temperatureC === null ? '' : `${formatNumber(phase.temperatureC, region)} °C`;
  const title = [phase.title || `Phase ${phaseLetter(index)}`, heat].filter(Boolean).join(' · ');
  return {
    columns: [
      { text: `${phaseLetter(index)}   ${title}`, bold: true, fontSize: SIZE.body, width: '*' },
      { text: right, bold: true, fontSize: SIZE.table, alignment: 'right', width: 120 },
    ],
  };
}

function nameCell(line: FormulaLine, material: Material | undefined, tradeNames: boolean): Cell {
  const name = material ? sheetName(material, tradeNames) : NO_MATERIAL;
  return {
    stack: [
      cell(line.toHundred ? `${name} (q.s. to 100)` : name),
      ...(line.note
        ? [{ text: line.note, fontSize: SIZE.small, italics: true, color: SOFT_INK } as SheetNode]
        : []),
    ],
  };
}

function columnsOf(shown: LineColumns): Column[] {
  return [
    { head: shown.tradeNames ? 'Raw material' : 'Ingredient (INCI)', share: shown.tradeNames ? 32 : 70 },
    ...(shown.tradeNames ? [{ head: 'INCI', share: shown.supplier ? 38 : 50 }] : []),
    ...(shown.supplier ? [{ head: 'Supplier', share: 18 }] : []),
    { head: '% w/w', share: 12, alignment: 'right' as const },
  ];
}

function supplierOf(material: Material | undefined): string {
  return newestOffer(material?.offers ?? [])?.supplier ?? '';
}

/** The phases of a formula, one table each, with shares that line up on the decimal sign, and the total. */
export function formulaTables(
  content: FormulaContent,
  materials: MaterialsById,
  region: Region,
  width: number,
  shown: LineColumns,
): SheetNode[] {
  const shares = formulaShares(content);
  const digits = shareDigits(formulaLines(content).map((line) => shares.byLine.get(line.id) ?? 0));
  const show = (ppm: number | undefined): string => formatShare(ppm ?? 0, region, digits);
  const tables = content.phases.map((phase, index): SheetNode => {
    const rows = phase.lines.map((line): Cell[] => {
      const material = materials[line.materialId];
      return [
        nameCell(line, material, shown.tradeNames),
        ...(shown.tradeNames ? [cell(material ? inciWords(material) : '', { fontSize: SIZE.small })] : []),
        ...(shown.supplier ? [cell(supplierOf(material), { fontSize: SIZE.small })] : []),
        figureCell(show(shares.byLine.get(line.id))),
      ];
    });
    const caption = phaseCaption(phase, index, region, `${show(shares.byPhase.get(phase.id))} %`);
    return wholeTable(ruledTable({ columns: columnsOf(shown), rows, width, caption }));
  });
  return [...tables, totalLine(shares.totalPpm, shares.differencePpm, show, width)];
}

function totalLine(
  totalPpm: number,
  differencePpm: number,
  show: (ppm: number) => string,
  width: number,
): SheetNode {
  const says =
    differencePpm === 0
      ? 'Total'
      : `Total – ${show(Math.abs(differencePpm))} % ${differencePpm > 0 ? 'short of' : 'beyond'} 100 %`;
  return {
    margin: [0, 6, 0, 0],
    columns: [
      { text: says, bold: true, fontSize: SIZE.table, width: width - 124 },
      { text: `${show(totalPpm)} %`, bold: true, fontSize: SIZE.table, alignment: 'right', width: 120 },
    ],
  };
}
