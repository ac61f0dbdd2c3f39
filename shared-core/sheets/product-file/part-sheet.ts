import { formatDate } from '../../locale/dates';
import { capital } from '../../locale/words';
import { neverMade } from '../cautions';
import { decisionFacts, withdrawnCaution } from '../decision-words';
import { cautionBox } from '../kit/caution-box';
import type { SheetDefinition } from '../kit/definition';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from '../kit/page';
import { numberText } from '../kit/text';
import { titleBlock } from '../kit/title-block';
import { FILE_PART_TITLES, type FilePart } from './file-parts';
import { partContent, type ProductFile } from './product-file-sheet';

/** One part of a version's file as a sheet of its own. @param printedAt ISO 8601 */
export function partSheet(
  { part, file }: { part: FilePart; file: ProductFile },
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const { content, version } = file.formula;
  const region = settings.languageRegion;
  const frame: SheetFrame = {
    kind: FILE_PART_TITLES[part],
    title: content.name,
    number: [content.code, `version ${version.number}`].filter(Boolean).join(', '),
    settings,
    printedAt,
  };
  return sheet(frame, [
    ...titleBlock(
      frame,
      [
        { label: 'Code', value: content.code ? numberText(content.code) : '' },
        { label: 'Version', value: String(version.number) },
        { label: 'Recorded', value: formatDate(version.recordedAt, region) },
        ...decisionFacts(version, region),
        { label: 'Kind', value: capital(content.market.kind ?? 'not said') },
      ],
      content.purpose,
    ),
    ...cautionBox(
      [...withdrawnCaution(version, region), ...neverMade(content)],
      contentWidth(settings.paperSize),
    ),
    ...partContent(part, file, settings),
  ]);
}
