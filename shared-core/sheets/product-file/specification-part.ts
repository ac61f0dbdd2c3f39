import { ISO_17516, SPECIFIED_ORGANISMS } from '../../microbiology/counts';
import { microbialLimits } from '../../microbiology/finished-product';
import { formatNumber, type Region } from '../../locale/numbers';
import { sourceWords } from '../../working/source-words';
import type { FormulaContent } from '../../formulas/formula';
import type { SheetNode } from '../kit/definition';
import { factList } from '../kit/facts';
import { cell, headed, ruledTable } from '../kit/tables';
import { paragraph, remark } from '../kit/text';
import { targetFacts } from '../target-words';

function microbiology({ market, target }: FormulaContent, region: Region, width: number): SheetNode[] {
  const { total, outAbove, because } = microbialLimits(market);
  const count = (value: number): string => formatNumber(value, region, { min: 0, max: 0 });
  return headed(
    'Microbiology',
    ruledTable({
      width,
      columns: [
        { head: 'Micro-organisms', share: 48 },
        { head: 'Limit in 1 g or 1 mL', share: 28 },
        { head: 'Out when', share: 24 },
      ],
      rows: [
        [
          cell('Aerobic mesophilic: bacteria with yeast and mould'),
          cell(`at most ${count(total)} CFU`),
          cell(`above ${count(outAbove)} CFU`),
        ],
        ...SPECIFIED_ORGANISMS.map((name) => [cell(name), cell('absent'), cell('found')]),
      ],
    }),
    remark(`${sourceWords(ISO_17516)}. This limit counts because ${because}.`),
    ...(target.microbiology ? [paragraph(`The maker’s own: ${target.microbiology}`)] : []),
  );
}

/** The specification of the finished product: what it is measured against, with the microbiological limits of its kind. */
export function specificationPart(content: FormulaContent, region: Region, width: number): SheetNode[] {
  const facts = factList(
    targetFacts(content.target, region).filter(({ label }) => label !== 'Microbiology'),
    width,
  );
  return [
    ...headed('Measured against', facts ?? paragraph('No target is written for this version.')),
    ...microbiology(content, region, width),
    remark(
      'Results of a batch are held against these by a qualified person; limits say nothing of safety by themselves.',
    ),
  ];
}
