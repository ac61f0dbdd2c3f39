import type { Archive } from './archive';
import { unescapeText } from './escaped-text';
import { tooLarge } from './refusals';
import { readXmlPart } from './xml-part';

const MOST_STRINGS = 5_000_000;

/**
 * The texts that cells share (ECMA-376 Part 1, 18.4.9 sst), each in one piece: the runs of a rich text (18.4.4 r) are
 * joined, and how it is pronounced is left out.
 */
export function readSharedStrings(archive: Archive, part: string | undefined): string[] {
  const strings: string[] = [];
  if (part === undefined) return strings;
  let whole = '';
  let run: string | null = null;
  readXmlPart(archive, part, {
    open(name) {
      if (name === 'si') whole = '';
      else if (name === 't') run = '';
    },
    text(piece) {
      if (run !== null) run += piece;
    },
    close(name) {
      if (name === 't' && run !== null) {
        whole += unescapeText(run);
        run = null;
      } else if (name === 'si') {
        if (strings.length === MOST_STRINGS) throw tooLarge('more shared texts than cells can use');
        strings.push(whole);
      }
    },
  });
  return strings;
}
