import { createRequire } from 'node:module';

/**
 * pdfkit reads and parses every face anew for each document, which takes most of the time of a sheet. Here a
 * face is parsed once and lent to each document; only its glyph cache is fresh, for that remembers which of two
 * characters with one glyph (a space, a no-break space) came first, and the same sheet must give the same bytes.
 */

interface Face {
  createSubset(): unknown;
  _glyphs: Record<number, unknown>;
}

interface EmbeddedFont {
  font: Face;
  subset: unknown;
}

interface PdfDocument {
  fontCache: Record<string, Record<string, EmbeddedFont> | undefined>;
  getFontType(bold?: boolean, italics?: boolean): string;
  getFontFile(family: string, bold?: boolean, italics?: boolean): string | null;
  provideFont(family: string, bold?: boolean, italics?: boolean): EmbeddedFont;
}

const require = createRequire(import.meta.url);
const faces = new Map<string, Face>();

/** Makes pdfmake keep the parsed faces. Called once, before the first sheet. */
export function keepFaces(): void {
  const { default: Document } = require('pdfmake/js/PDFDocument') as { default: { prototype: PdfDocument } };
  const { provideFont } = Document.prototype;
  Document.prototype.provideFont = function (this: PdfDocument, family, bold, italics) {
    const known = this.fontCache[family]?.[this.getFontType(bold, italics)];
    const font = known ?? provideFont.call(this, family, bold, italics);
    const file = this.getFontFile(family, bold, italics);
    if (known || !file) return font;
    const face = faces.get(file) ?? font.font;
    faces.set(file, face);
    face._glyphs = {};
    font.font = face;
    font.subset = face.createSubset();
    return font;
  };
}
