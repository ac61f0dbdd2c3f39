import { Problem } from '@core/problems/problem';
import { TEXT_FONT } from '@core/sheets/kit/definition';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { printable, unprintableCharacters } from '@core/sheets/printable-text';
import type { HasGlyph, UnprintableCharacter } from '@core/sheets/printable-text';
import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { coverage, FONTS, isFontFile } from './fonts';
import { keepFaces } from './kept-faces';
import { copySheet } from './printable-copy';
import type { SetText } from './printable-copy';
import { lookUpStylesQuickly } from './quick-styles';
import { gatherCommands } from './quick-writing';
import { tagContent } from './structure';
import { writeStructure } from './tagging';

pdfmake.setFonts(FONTS);
// A sheet holds everything it shows: it may reach nothing but our fonts.
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy(isFontFile);
writeStructure();
keepFaces();
lookUpStylesQuickly();
gatherCommands();

export interface RenderOptions {
  /** The date written into the file; the same date and definition give the same bytes. */
  now: Date;
  /** Print what the fonts lack as "[U+65E5]" instead of refusing. */
  replaceUnprintable?: boolean;
}

const asked = new Map<string, Map<number, boolean>>();

/** Whether a family prints a character; each is looked up once. */
function hasGlyph(font: string): HasGlyph {
  const known = asked.get(font) ?? new Map<number, boolean>();
  asked.set(font, known);
  const covers = coverage(font);
  return (codePoint) => {
    const answer = known.get(codePoint) ?? covers(codePoint);
    known.set(codePoint, answer);
    return answer;
  };
}

// A "word" of thousands of letters would be measured anew for every line; a zero-width space lets it break.
function withBreaks(text: string): string {
  return text.replace(/\S{80}(?=\S{20})/gu, '$&\u200b');
}

/** A copy with only printable texts, and the characters that had to be replaced for it. */
function printableCopy(definition: SheetDefinition) {
  const texts = new Map<string, SetText[]>();
  const testers = new Map<string, HasGlyph>();
  const copy = copySheet(definition, (text) => {
    const tester = testers.get(text.font) ?? hasGlyph(text.font);
    testers.set(text.font, tester);
    const out = printable(text.text, tester);
    if (out !== text.text) texts.set(text.font, [...(texts.get(text.font) ?? []), text]);
    return text.font === TEXT_FONT ? withBreaks(out) : out;
  });
  copy.footer(1, 1);
  const missing = [...texts].flatMap(([font, placed]) => unprintableCharacters(placed, hasGlyph(font)));
  return { copy, missing };
}

function refuse(characters: UnprintableCharacter[]): never {
  const named = characters.slice(0, 8).map((one) => `${one.character} (${one.code})`);
  const where = [...new Set(characters.flatMap((one) => one.where))];
  const more = characters.length > 8 ? ` and ${characters.length - 8} more` : '';
  throw new Problem({
    code: 'unprintable-text',
    title: `The typeface of the sheets has no character for ${named.join(', ')}${more}.`,
    advice: `Write these names in Latin, Greek or Cyrillic letters, or print each character as its code. They are in: ${where.slice(0, 5).join('; ')}.`,
    facts: { characters: characters.map(({ character, code }) => ({ character, code })), where },
  });
}

/**
 * Renders a sheet as a tagged PDF with its fonts embedded. The definition is not changed.
 * @throws Problem `unprintable-text` when a character has no glyph and `replaceUnprintable` is not set
 */
export async function renderSheet(definition: SheetDefinition, options: RenderOptions): Promise<Uint8Array> {
  const { copy, missing } = printableCopy(definition);
  if (missing.length > 0 && !options.replaceUnprintable) refuse(missing);
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
