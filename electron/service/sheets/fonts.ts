import { createRequire } from 'node:module';
import { NUMBER_FONT, TEXT_FONT } from '@core/sheets/kit/definition';
import type { HasGlyph } from '@core/sheets/printable-text';
import { openSync } from 'fontkit';
import type { Font } from 'fontkit';
import type { TFontDictionary } from 'pdfmake/interfaces';

// Resolved as modules, so that they are found beside the built service as well as in the source tree.
const installed = createRequire(import.meta.url);

function fontFile(family: string, style: string, name: string): string {
  return installed.resolve(`@expo-google-fonts/${family}/${style}/${name}_${style}.ttf`);
}

const SANS = (style: string): string => fontFile('source-sans-3', style, 'SourceSans3');
const CODE = (style: string): string => fontFile('source-code-pro', style, 'SourceCodePro');

/** Both families under the SIL Open Font Licence, embedded as subsets in every sheet. */
export const FONTS: TFontDictionary = {
  [TEXT_FONT]: {
    normal: SANS('400Regular'),
    italics: SANS('400Regular_Italic'),
    bold: SANS('600SemiBold'),
    bolditalics: SANS('600SemiBold_Italic'),
  },
  [NUMBER_FONT]: {
    normal: CODE('400Regular'),
    italics: CODE('400Regular_Italic'),
    bold: CODE('600SemiBold'),
    bolditalics: CODE('600SemiBold_Italic'),
  },
};

const files = Object.values(FONTS).flatMap((family) => Object.values(family) as string[]);

/** The only files a sheet may read. */
export function isFontFile(path: string): boolean {
  return files.includes(path);
}

const opened = new Map<string, Font[]>();

function facesOf(family: string): Font[] {
  const known = opened.get(family);
  if (known) return known;
  const faces = (Object.values(FONTS[family] ?? {}) as string[]).map((path) => {
    const face = openSync(path);
    if (!('hasGlyphForCodePoint' in face)) throw new Error(`${path} is a collection, not one face.`);
    return face;
  });
  opened.set(family, faces);
  return faces;
}

/** Whether every style of a family can print a character. */
export function coverage(family: string = TEXT_FONT): HasGlyph {
  const faces = facesOf(family);
  return (codePoint) => faces.every((face) => face.hasGlyphForCodePoint(codePoint));
}
