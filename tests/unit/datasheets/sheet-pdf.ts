import { pageText } from '@core/datasheets/page-text';
import type { PageText } from '@core/datasheets/lines';
import { FONTS, isFontFile } from '@service/sheets/fonts';
import { TEXT_FONT } from '@core/sheets/kit/definition';
import pdfmake from 'pdfmake';
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A sheet as a PDF, as its supplier would send it. */
export async function sheetPdf(
  content: Content,
  more: Partial<TDocumentDefinitions> = {},
): Promise<Uint8Array<ArrayBuffer>> {
  pdfmake.setFonts(FONTS);
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy(isFontFile);
  const made = pdfmake.createPdf({
    content,
    defaultStyle: { font: TEXT_FONT, fontSize: 9.5 },
    pageMargins: [50, 60, 50, 60],
    ...more,
  });
  return new Uint8Array(await made.getBuffer());
}

/** The text of a PDF as it lies on its pages, read by pdf.js. */
export async function pagesOf(bytes: Uint8Array): Promise<PageText[]> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: PageText[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    pages.push(
      pageText(
        number,
        { width, height },
        items.flatMap((item) => ('str' in item ? [item] : [])),
      ),
    );
  }
  await document.destroy();
  return pages;
}
