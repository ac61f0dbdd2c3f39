import { Problem } from '@core/problems/problem';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { printable, unprintableCharacters } from '@core/sheets/printable-text';
import type { HasGlyph, UnprintableCharacter } from '@core/sheets/printable-text';
import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { coverage, FONTS, isFontFile } from './fonts';
import { keepFaces } from './kept-faces';
import { copySheet } from './printable-copy';
import type { SetText } from './printable-copy';
import { tagContent } from './structure';
import { writeStructure } from './tagging';

pdfmake.setFonts(FONTS);
// A sheet holds everything it shows: it may reach nothing but our fonts.
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy(isFontFile);
writeStructure();
keepFaces();

export interface RenderOptions {
  /** The date written into the file; the same date and definition give the same bytes. */
  now: Date;
  /** Print what the fonts lack as "[U+65E5]" instead of refusing. */
  replaceUnprintable?: boolean;
}

const glyphs = new Map<string, HasGlyph>();
function hasGlyph(font: string): HasGlyph {
  const known = glyphs.get(font) ?? coverage(font);
  glyphs.set(font, known);
  return known;
}

function missingFrom(definition: SheetDefinition): UnprintableCharacter[] {
  const byFont = new Map<string, SetText[]>();
  const collect = (text: SetText): string => {
    byFont.set(text.font, [...(byFont.get(text.font) ?? []), text]);
    return text.text;
  };
  copySheet(definition, collect).footer(1, 1);
  return [...byFont].flatMap(([font, texts]) => unprintableCharacters(texts, hasGlyph(font)));
}

function refuse(characters: UnprintableCharacter[]): never {
  const named = characters.slice(0, 8).map((one) => `${one.character} (${one.code})`);
  const where = [...new Set(characters.flatMap((one) => one.where))];
  const more = characters.length > 8 ? ` and ${characters.length - 8} more` : '';
  throw new Problem({
    code: 'unprintable-text',
    title: `The sheets’ typeface has no sign for ${named.join(', ')}${more}.`,
    advice: `Write these names in Latin, Greek or Cyrillic letters, or print each sign as its code. They stand under: ${where.slice(0, 5).join('; ')}.`,
    facts: { characters: characters.map(({ character, code }) => ({ character, code })), where },
  });
}

/**
 * Renders a sheet as a tagged PDF with its fonts embedded. The definition is not changed.
 * @throws Problem `unprintable-text` when a character has no glyph and `replaceUnprintable` is not set
 */
export async function renderSheet(definition: SheetDefinition, options: RenderOptions): Promise<Uint8Array> {
  if (!options.replaceUnprintable) {
    const missing = missingFrom(definition);
    if (missing.length > 0) refuse(missing);
  }
  const copy = copySheet(definition, ({ text, font }) => printable(text, hasGlyph(font)));
  tagContent(copy.content);
  const { creationDate, ...document } = {
    ...copy,
    version: '1.7',
    tagged: true,
    displayTitle: true,
    creationDate: options.now,
  };
  const info = {
    ...copy.info,
    creator: 'Stillroom',
    producer: 'Stillroom',
    creationDate,
    modDate: creationDate,
  };
  const made = pdfmake.createPdf({ ...document, info } as unknown as TDocumentDefinitions);
  return new Uint8Array(await made.getBuffer());
}
