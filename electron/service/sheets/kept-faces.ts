import { createRequire } from 'node:module';

/**
 * pdfkit reads, parses and shapes every face anew for each document, which takes most of the time of a sheet.
 * Here a face is parsed once, keeps the words it has shaped, and is lent to each document.
 */

interface Face {
  characterSet: number[];
  glyphForCodePoint(codePoint: number): unknown;
}

type ShapedWords = Record<string, unknown>;

interface EmbeddedFont {
  font: Face;
  layoutCache: ShapedWords;
  constructor: new (document: PdfDocument, face: Face, id: string) => EmbeddedFont;
}

interface PdfDocument {
  fontCache: Record<string, Record<string, EmbeddedFont> | undefined>;
  _font: EmbeddedFont;
  _fontCount: number;
  _fontFamilies: Record<string, EmbeddedFont>;
  getFontType(bold?: boolean, italics?: boolean): string;
  getFontFile(family: string, bold?: boolean, italics?: boolean): string | null;
  provideFont(family: string, bold?: boolean, italics?: boolean): EmbeddedFont;
}

interface KeptFace {
  face: Face;
  make: EmbeddedFont['constructor'];
  words: ShapedWords;
}

/** Enough for the words of a maker's library; past it the words are shaped anew. */
const MOST_WORDS = 4000;

const installed = createRequire(import.meta.url);
const kept = new Map<string, KeptFace>();

function keep(file: string, font: EmbeddedFont): KeptFace {
  // A glyph remembers the first character that asked for it, and some serve two (a space and a no-break space).
  // Asking for all in order settles that once, so that a sheet's bytes do not depend on the sheets before it.
  for (const codePoint of font.font.characterSet) font.font.glyphForCodePoint(codePoint);
  const made = { face: font.font, make: font.constructor, words: font.layoutCache };
  kept.set(file, made);
  return made;
}

function lend(document: PdfDocument, file: string, from: KeptFace): EmbeddedFont {
  if (Object.keys(from.words).length > MOST_WORDS) from.words = Object.create(null) as ShapedWords;
  document._fontCount += 1;
  const font = new from.make(document, from.face, `F${document._fontCount}`);
  font.layoutCache = from.words;
  document._fontFamilies[file] = font;
  document._font = font;
  return font;
}

/** Makes pdfmake keep the parsed faces. Called once, before the first sheet. */
export function keepFaces(): void {
  const { default: Document } = installed('pdfmake/js/PDFDocument') as {
    default: { prototype: PdfDocument };
  };
  const { provideFont } = Document.prototype;
  Document.prototype.provideFont = function (this: PdfDocument, family, bold, italics) {
    const type = this.getFontType(bold, italics);
    const file = this.getFontFile(family, bold, italics);
    const ready = this.fontCache[family]?.[type];
    if (ready) return ready;
    const known = file ? kept.get(file) : undefined;
    if (!file || !known) {
      const font = provideFont.call(this, family, bold, italics);
      if (file) keep(file, font);
      return font;
    }
    const font = lend(this, file, known);
    this.fontCache[family] = { ...this.fontCache[family], [type]: font };
    return font;
  };
}
