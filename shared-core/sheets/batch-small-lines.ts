import type { Batch } from '../batches/batch';
import { premixWords, smallLineWords } from '../batches/small-line-words';
import { MINIMUM_WEIGHT_SOURCE, smallLines } from '../batches/small-lines';
import type { FormulaVersion } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import type { Region } from '../locale/numbers';
import { sourceWords } from '../working/source-words';
import { NO_MATERIAL } from './formula-lines';
import type { SheetNode } from './kit/definition';
import { heading, paragraph, remark } from './kit/text';
import { stepNodes } from './working-steps';

/** Lines that the balance weighs too coarsely, each with the premix to weigh instead and its computation. */
export function smallLinesNodes(batch: Batch, version: FormulaVersion, region: Region): SheetNode[] {
  const { content, materials } = version;
  const small = smallLines(content, batch);
  if (small.length === 0) return [];
  const nameOf = (materialId: string | undefined): string =>
    materials[materialId ?? '']?.tradeName ?? NO_MATERIAL;
  const carrierOf = (lineId: string): string =>
    nameOf(formulaLines(content).find((line) => line.id === lineId)?.materialId);
  const told = small.flatMap((line): SheetNode[] => {
    const { premix } = line;
    return [
      paragraph(`${nameOf(line.materialId)}: ${smallLineWords(line, batch.readabilityMg, region)}.`, {
        bold: true,
      }),
      ...(premix
        ? [
            paragraph(
              `Premix with ${carrierOf(premix.carrierLineId)}: ${premixWords(premix, batch.readabilityMg, region)}.`,
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
