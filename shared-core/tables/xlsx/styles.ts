import type { Archive } from './archive';
import { unescapeText } from './escaped-text';
import { type FormatKind, kindOfFormat } from './number-formats';
import { readXmlPart } from './xml-part';

/**
 * What the format of each cell style makes of a number, by the style's place in cellXfs (ECMA-376 Part 1, 18.8.10),
 * as a cell's `s` means it (18.3.1.4).
 */
export function readStyles(archive: Archive, part: string | undefined): FormatKind[] {
  const codes = new Map<number, string>();
  const formats: number[] = [];
  if (part === undefined) return [];
  let within = '';
  readXmlPart(archive, part, {
    open(name, { numFmtId, formatCode }) {
      if (name === 'cellXfs' || name === 'numFmts') within = name;
      else if (name === 'numFmt' && within === 'numFmts')
        codes.set(Number(numFmtId), unescapeText(formatCode ?? '')); // 18.8.30
      else if (name === 'xf' && within === 'cellXfs') formats.push(Number(numFmtId ?? 0)); // 18.8.45
    },
    close(name) {
      if (name === within) within = '';
    },
  });
  const kinds = new Map([...new Set(formats)].map((id) => [id, kindOfFormat(id, codes)]));
  return formats.map((id) => kinds.get(id)!);
}
