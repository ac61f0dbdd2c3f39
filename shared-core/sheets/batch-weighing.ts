import type { Batch } from '../batches/batch';
import { recordUnit } from '../batches/record-unit';
import type { FormulaVersion } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import { formatMassIn } from '../locale/mass';
import type { MassUnit } from '../locale/mass';
import { formatShare, shareDigits } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import { NO_MATERIAL, phaseCaption } from './formula-lines';
import type { Cell, SheetNode, TextRun, TextStyle } from './kit/definition';
import { HAND_ROW } from './kit/by-hand';
import { blankCell, figureCell, ruledTable, wholeTable } from './kit/tables';
import type { Column } from './kit/tables';
import { SIZE, SOFT_INK } from './kit/type-scale';
import { hazardWords } from '../materials/hazards';
import { inciWords } from '../materials/words';

function columnsOf(unit: MassUnit): Column[] {
  return [
    { head: 'Raw material', share: 33 },
    { head: '% w/w', share: 9.5, alignment: 'right' },
    { head: `Target, ${unit}`, share: 12, alignment: 'right' },
    { head: 'Lot', share: 14, byHand: true },
    { head: `Tare, ${unit}`, share: 10, byHand: true },
    { head: `Weighed, ${unit}`, share: 12, byHand: true },
    { head: `Deviation, ${unit}`, share: 11, byHand: true },
    { head: 'Initials', share: 9, byHand: true },
  ];
}

function materialCell(
  line: { note: string },
  material: FormulaVersion['materials'][string] | undefined,
): Cell {
  const small = (text: string, more: TextStyle = {}): TextRun => ({
    text,
    fontSize: SIZE.label,
    color: SOFT_INK,
    ...more,
  });
  return {
    stack: [
      {
        text: [
          { text: material?.tradeName ?? NO_MATERIAL, fontSize: SIZE.table, bold: true },
          ...(material?.hazards.length === 0 ? [small('  no hazards recorded')] : []),
        ],
      },
      ...(material ? [small(inciWords(material, 6))] : []),
      ...(line.note ? [small(line.note, { italics: true })] : []),
      ...(material && material.hazards.length > 0
        ? [small(`▲ ${hazardWords(material)}`, { bold: true })]
        : []),
    ],
  };
}

/** The weighing record: a table for each phase, targets printed, the rest ruled for a hand. */
export function weighingTables(
  batch: Batch,
  version: FormulaVersion,
  region: Region,
  width: number,
): SheetNode[] {
  const { content, materials } = version;
  const unit = recordUnit(batch.totalMg);
  const shares = formulaShares(content).byLine;
  const digits = shareDigits(formulaLines(content).map((line) => shares.get(line.id) ?? 0));
  const targets = new Map(batch.lines.map((line) => [line.lineId, line.targetMg]));
  const mass = (mg: number): string => formatMassIn(mg, unit, region, batch.readabilityMg);
  const total: SheetNode = {
    margin: [0, 3, 0, 0],
    columns: [
      { text: 'Total of all targets', bold: true, fontSize: SIZE.table, width: width - 124 },
      {
        text: `${mass(batch.lines.reduce((sum, line) => sum + line.targetMg, 0))} ${unit}`,
        bold: true,
        fontSize: SIZE.table,
        alignment: 'right',
        width: 120,
      },
    ],
  };
  return content.phases.map((phase, index): SheetNode => {
    const rows = phase.lines.map((line): Cell[] => [
      materialCell(line, materials[line.materialId]),
      figureCell(formatShare(shares.get(line.id) ?? 0, region, digits)),
      figureCell(mass(targets.get(line.id) ?? 0), { bold: true }),
      ...Array.from({ length: 5 }, blankCell),
    ]);
    const sum = phase.lines.reduce((total, line) => total + (targets.get(line.id) ?? 0), 0);
    const caption = phaseCaption(phase, index, region, `${mass(sum)} ${unit}`);
    const table = ruledTable({ columns: columnsOf(unit), rows, width, caption, rowHeight: HAND_ROW });
    return wholeTable(table, ...(index === content.phases.length - 1 ? [total] : []));
  });
}
