import { isPast, type MaterialDocument } from '../materials/document';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule, Finding } from './check';
import type { LineFacts } from './facts';

/** Papers without which a material is not taken into a product; a certificate or another paper bears a claim. */
const NEEDED: readonly MaterialDocument['kind'][] = ['safety data sheet', 'specification'];
/** Time to ask a supplier for the next one; common practice, no source. */
const NOTICE_DAYS = 60;

interface Paper {
  line: LineFacts;
  document: MaterialDocument;
}

function daysAfter(day: string, days: number): string {
  const at = new Date(`${day}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}

function told(papers: readonly Paper[], severity: Finding['severity'], title: string): Finding[] {
  if (papers.length === 0) return [];
  const names = papers.map(
    ({ line, document }) => `${line.material.tradeName}: ${document.title} (until ${document.validUntil})`,
  );
  return [
    {
      ruleId: 'papers',
      severity,
      title: `${title}: ${[...new Set(names)].join('; ')}`,
      lines: [...new Set(papers.map(({ line }) => line.lineId))],
      advice: 'Ask the supplier for the current one, and add it to the material with its dates.',
      source: COMMON_PRACTICE,
    },
  ];
}

/** The papers of a formula's materials, by the last day on which each holds; a newer one of its kind takes its place. */
export const papers: CheckRule = {
  id: 'papers',
  name: 'Documents in date',
  tells:
    'a material’s data sheet, specification or certificate has expired or soon will; documents without a date are not judged',
  judge({ used, onDay }) {
    if (onDay === null) return [];
    const all = used.flatMap((line) =>
      line.material.documents.map((document): Paper => ({ line, document })),
    );
    const pastOn = (day: string): Paper[] =>
      all.filter(({ line, document }) => isPast(document, line.material.documents, day));
    const past = pastOn(onDay);
    const soon = pastOn(daysAfter(onDay, NOTICE_DAYS + 1)).filter((one) => !past.includes(one));
    const needed = ({ document }: Paper): boolean => NEEDED.includes(document.kind);
    return [
      ...told(past.filter(needed), 'warn', 'Expired document'),
      ...told(
        past.filter((one) => !needed(one)),
        'note',
        'Expired certificate or other document',
      ),
      ...told(soon, 'note', `Document that expires within ${NOTICE_DAYS} days`),
    ];
  },
};
