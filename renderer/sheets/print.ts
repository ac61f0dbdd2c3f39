import { drawPage, pageSize, type Pdf } from './pdf';
import './print.css';

/** Fine enough for a table's hairlines and small type on an office printer. */
const PRINT_DPI = 220;

function paperClass({ width, height }: { width: number; height: number }): string {
  const landscape = width > height;
  // US Letter is 612 points on its short side, A4 595.
  const paper = Math.min(width, height) > 603 ? 'letter' : 'a4';
  return `${paper}-${landscape ? 'landscape' : 'portrait'}`;
}

async function pageImage(pdf: Pdf, number: number, canvas: HTMLCanvasElement): Promise<HTMLImageElement> {
  await drawPage(pdf, number, canvas, PRINT_DPI / 72);
  const blob = await new Promise<Blob | null>((take) => canvas.toBlob(take, 'image/png'));
  if (!blob) throw new Error(`Page ${number} could not be drawn for printing.`);
  const image = new Image();
  image.alt = '';
  image.className = paperClass(await pageSize(pdf, number));
  image.src = URL.createObjectURL(blob);
  await image.decode();
  return image;
}

/**
 * Prints a PDF with the browser's or the desktop's own print dialog. Its pages stand in for the screen while it
 * prints, since our security policy lets no page be framed.
 */
export async function printPdf(pdf: Pdf): Promise<void> {
  const holder = document.createElement('div');
  holder.className = 'print-pages';
  holder.setAttribute('aria-hidden', 'true');
  const canvas = document.createElement('canvas');
  for (let number = 1; number <= pdf.numPages; number += 1)
    holder.append(await pageImage(pdf, number, canvas));
  const away = (): void => {
    for (const image of holder.querySelectorAll('img')) URL.revokeObjectURL(image.src);
    holder.remove();
  };
  document.body.append(holder);
  // Some browsers return from print() before the dialog closes: the pages stay until they say it has.
  window.addEventListener('afterprint', away, { once: true });
  window.print();
}
