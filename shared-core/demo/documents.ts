import type { BatchDocumentKind } from '../batches/document';
import type { DocumentKind } from '../materials/vocabulary';

/** A paper of the demonstration, with the code of its material or the number of its batch. */
export interface DemoDocument<Kind extends string = DocumentKind> {
  code: string;
  kind: Kind;
  title: string;
  dated: string;
  validUntil: string;
  /** A PDF of one page that says what it stands for. */
  bytes: Uint8Array<ArrayBuffer>;
}

const TEXT_TOP = 780;
const LINE_ROOM = 24;

/** A PDF of one page in a font that every reader has: ISO 32000-1, 7.5 and 9.6.2.2. @param lines plain ASCII */
function onePage(lines: readonly string[]): Uint8Array<ArrayBuffer> {
  const shown = lines.map((line) => `(${line.replace(/[()\\]/g, '\\$&')}) Tj 0 -${LINE_ROOM} Td`);
  const drawn = `BT /F1 14 Tf 72 ${TEXT_TOP} Td ${shown.join(' ')} ET`;
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> >> >>',
    `<< /Length ${drawn.length} >>\nstream\n${drawn}\nendstream`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
  ];
  let file = '%PDF-1.4\n';
  const starts = objects.map((object, index) => {
    const start = file.length;
    file += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return start;
  });
  const table = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('');
  const size = objects.length + 1;
  const end = `xref\n0 ${size}\n0000000000 65535 f \n${table}trailer\n<< /Size ${size} /Root 1 0 R >>\n`;
  return new TextEncoder().encode(`${file}${end}startxref\n${file.length}\n%%EOF\n`);
}

type Paper<Kind extends string> = [
  code: string,
  kind: Kind,
  title: string,
  dated: string,
  validUntil: string,
];

const OF_MATERIALS: readonly Paper<DocumentKind>[] = [
  ['O-201', 'certificate', 'Organic certificate 2025', '2025-07-01', '2026-06-30'],
  ['O-202', 'certificate', 'Organic certificate 2026', '2026-05-04', '2031-05-03'],
  ['O-203', 'safety data sheet', 'Safety data sheet of February 2026', '2026-02-10', ''],
  ['O-203', 'specification', 'Specification, third issue', '2025-11-03', '2028-11-02'],
];

const OF_BATCHES: readonly Paper<BatchDocumentKind>[] = [
  ['B-001', 'certificate of analysis', 'Certificate of analysis B-001', '2026-09-04', ''],
];

function written<Kind extends string>(papers: readonly Paper<Kind>[], whose: string): DemoDocument<Kind>[] {
  return papers.map(([code, kind, title, dated, validUntil]) => ({
    ...{ code, kind, title, dated, validUntil },
    bytes: onePage([title, `Dated ${dated}`, `Invented for demonstration: it stands for ${whose}.`]),
  }));
}

/** The papers on file in the demonstration: every one invented, and says so. */
export const demoDocuments = (): DemoDocument[] => written(OF_MATERIALS, 'the paper of a supplier');
export const demoBatchDocuments = (): DemoDocument<BatchDocumentKind>[] =>
  written(OF_BATCHES, 'what a laboratory found');
