import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
  pages: string[];
  text: string;
  title: string;
  language: string;
  marked: boolean;
  /** Roles of the structure tree in reading order, over all pages. */
  roles: string[];
}

interface StructNode {
  role?: string;
  children?: StructNode[];
}

function rolesOf(node: StructNode | null): string[] {
  if (!node) return [];
  const own = node.role && node.role !== 'Root' ? [node.role] : [];
  return [...own, ...(node.children ?? []).flatMap(rolesOf)];
}

/** What a reader, and a screen reader, gets out of a PDF; read by pdf.js. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: string[] = [];
  const roles: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const content = await page.getTextContent();
    pages.push(
      content.items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' '),
    );
    roles.push(...rolesOf((await page.getStructTree()) as StructNode | null));
  }
  const { info } = (await document.getMetadata()) as { info: { Title?: string; Language?: string } };
  const marked = (await document.getMarkInfo())?.Marked === true;
  await document.destroy();
  return {
    pages,
    text: pages.join(' '),
    title: info.Title ?? '',
    language: info.Language ?? '',
    marked,
    roles,
  };
}
