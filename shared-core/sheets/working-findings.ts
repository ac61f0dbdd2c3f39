import type { BenchReading } from '../emulsions/bench/reading';
import type { SheetNode } from './kit/definition';
import { heading, paragraph, remark } from './kit/text';
import type { Region } from '../locale/numbers';
import { regionText } from '../locale/readable';
import { capital } from '../locale/words';
import { sourceWords } from '../working/source-words';

/** Charges and climate as the bench tells them, in print. */
export function findingNodes({ conflicts, blocking, climate }: BenchReading, region: Region): SheetNode[] {
  const said = (text: string): string => regionText(text, region);
  const charges = conflicts.flatMap((one): SheetNode[] => [
    paragraph(`${capital(one.severity)}: ${one.first.name} with ${one.second.name}`, { bold: true }),
    paragraph(said(`${one.why} ${one.advice}`)),
    remark(`Source: ${sourceWords(one.source)}`),
  ]);
  const refused =
    blocking.length > 0 ? [paragraph('This system is refused: see the salt below.', { bold: true })] : [];
  const outlook =
    climate.system === 'none'
      ? []
      : [
          paragraph(said(`Frost, ${climate.frost.risk} risk. ${climate.frost.says}`)),
          paragraph(said(`Heat, ${climate.heat.risk} risk. ${climate.heat.says}`)),
          ...climate.tests.flatMap((test): SheetNode[] => [
            paragraph(said(`Add to the stability plan: ${test.stress}. ${test.conditions}. ${test.why}`)),
            remark(`Source: ${sourceWords(test.source)}`),
          ]),
        ];
  return [
    heading('Charges and climate'),
    ...refused,
    ...(charges.length > 0 ? charges : [paragraph('No charge conflict.')]),
    ...outlook,
  ];
}
