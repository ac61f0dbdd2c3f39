import type { Sheet } from '../table';
import { Archive } from './archive';
import { openDocument, otherThanArchive } from './file-kind';
import { readSharedStrings } from './shared-strings';
import { readStyles } from './styles';
import { readWorkbook } from './workbook';
import { readWorksheet, Room } from './worksheet';

/**
 * Every worksheet of an Office Open XML workbook (.xlsx; ECMA-376 Part 1, 18, strict or transitional), in the
 * workbook's order, with what its cells hold as typed values:
 *
 * - text as it stands, its runs joined; an empty one is null. Numbers with every digit. Days and moments by their
 *   number format. A time of day or a duration as text (`09:30`), and a number shown as per cent too (`5%`).
 * - formulas by the value kept with them, error cells as such, merged cells in their first only.
 *
 * What is to be told before it is used stands in each sheet's notes.
 * @throws Problem (invalid-input) where it is none, locked, damaged, without a worksheet, or unpacks to too much.
 */
export function readXlsx(bytes: Uint8Array): Sheet[] {
  const other = otherThanArchive(bytes);
  if (other) throw other;
  const archive = new Archive(bytes);
  if (archive.has('content.xml') && archive.has('mimetype')) throw openDocument();
  const { sheets, from1904, stale, sharedStrings, styles } = readWorkbook(archive);
  const context = {
    strings: readSharedStrings(archive, sharedStrings),
    formats: readStyles(archive, styles),
    from1904,
    stale,
  };
  const room = new Room();
  return sheets.map((sheet) => readWorksheet(archive, sheet, context, room));
}
