import type { Batch } from '../batches/batch';
import { MINIMUM_WEIGHT_SOURCE, smallLines, type SmallLine } from '../batches/small-lines';
import type { FormulaVersion } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import { formatMass } from '../locale/mass';
import { formatNumber, type Region } from '../locale/numbers';
import { sourceWords } from '../working/source-words';
import { NO_MATERIAL } from './formula-lines';
import type { SheetNode } from './kit/definition';
import { heading, paragraph, remark } from './kit/text';
import { stepNodes } from './working-steps';

/** How far rounding moves a line, in per cent with its sign. */
function moved({ roundingPpm }: SmallLine, region: Region): string {
  const size = formatNumber(Math.abs(roundingPpm) / 10_000, region, { min: 0, max: 1 });
  return `${roundingPpm < 0 ? '−' : '+'}${size} %`;
}

/** Lines that the balance weighs too coarsely, each with the premix to weigh instead and its computation. */
export function smallLinesNodes(batch: Batch, version: FormulaVersion, region: Region): SheetNode[] {
  const { content, materials } = version;
  const small = smallLines(content, batch);
  if (small.length === 0) return [];
  const nameOf = (materialId: string | undefined): string =>
    materials[materialId ?? '']?.tradeName ?? NO_MATERIAL;
  const carrierOf = (lineId: string): string =>
    nameOf(formulaLines(content).find((line) => line.id === lineId)?.materialId);
  const mass = (mg: number): string => formatMass(mg, region, batch.readabilityMg);
  const told = small.flatMap((line): SheetNode[] => {
    const { premix } = line;
    const below = line.belowMinimum ? ', below its minimum weight' : '';
    return [
      paragraph(
        `${nameOf(line.materialId)}: ${formatMass(line.exactMg, region)} asked for, ${mass(line.targetMg)} by this balance (${moved(line, region)})${below}.`,
        { bold: true },
      ),
      ...(premix
        ? [
            paragraph(
              `Premix with ${carrierOf(premix.carrierLineId)}: ${mass(premix.takeMg)} of a mixture of 1 part in ${formatNumber(premix.parts, region)}.`,
            ),
            ...stepNodes(premix.worked, region),
            ...premix.worked.cautions.map(remark),
          ]
        : [paragraph('No line is large enough to carry a premix: use a finer balance.')]),
    ];
  });
  return [
    heading('Lines to weigh with care'),
    ...told,
    remark(`Source of the minimum weight: ${sourceWords(MINIMUM_WEIGHT_SOURCE)}`),
  ];
}
