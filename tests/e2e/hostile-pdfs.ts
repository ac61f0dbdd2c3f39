import { deflateSync } from 'node:zlib';
import { sheetPdf } from '../unit/datasheets/sheet-pdf';

/** A page that asks for millions of pieces of text, in a file of some kilobytes: reading it would take minutes. */
export function hangingPdf(): Buffer {
  const content = deflateSync(
    Buffer.from('BT /F1 1 Tf 1 0 0 1 9 9 Tm (Larkspur) Tj ET\n'.repeat(3_000_000)),
    {
      level: 9,
    },
  );
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources << /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >> >>',
  ];
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n')];
  const places: number[] = [];
  const add = (...pieces: Buffer[]): void => void parts.push(...pieces);
  const length = (): number => parts.reduce((sum, part) => sum + part.length, 0);
  objects.forEach((object, at) => {
    places.push(length());
    add(Buffer.from(`${at + 1} 0 obj\n${object}\nendobj\n`));
  });
  places.push(length());
  add(Buffer.from(`4 0 obj\n<< /Length ${content.length} /Filter /FlateDecode >>\nstream\n`), content);
  add(Buffer.from('\nendstream\nendobj\n'));
  const start = length();
  const rows = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  add(
    Buffer.from(
      `xref\n0 5\n0000000000 65535 f \n${rows}trailer\n<< /Size 5 /Root 1 0 R >>\nstartxref\n${start}\n%%EOF\n`,
    ),
  );
  return Buffer.concat(parts);
}

/** Nine hundred pages, of which the first says something. */
export const longPdf = () =>
  sheetPdf([
    { text: 'HLB value: 12' },
    ...Array.from({ length: 899 }, (_, at) => ({ text: `Page ${at + 2}`, pageBreak: 'before' as const })),
  ]);

export const lockedPdf = () => sheetPdf('HLB value: 12', { userPassword: 'closed', version: '1.7' });

/** A page that is a picture of one, as a scanner makes it. */
export const scannedPdf = () =>
  sheetPdf([{ canvas: [{ type: 'rect', x: 0, y: 0, w: 300, h: 200, color: '#777777' }] }]);
