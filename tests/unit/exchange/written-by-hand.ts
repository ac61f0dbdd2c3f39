import { DOCUMENT_FORMAT } from '@core/exchange/document';
import { blankMaterial } from '@core/materials/material';
import { performMeeting, type Met } from '@service/meeting/meeting-job';
import { content, make, nextId, phase } from '../checks/build';
import { emptyLibrary } from '../merging/two-libraries';

/* Documents as somebody may write them by hand, and a library that meets one. */

const AT = '2026-03-01T10:00:00.000Z';

/** The JSON of a document with one material, and a formula that holds so much of it. */
export function formulaWith(ppm: number): string {
  const material = make('Larkspur Oil', 'Limnanthes Alba Seed Oil');
  const formula = content([phase([[material, 1]])]);
  formula.phases[0]!.lines[0]!.ppm = ppm;
  const record = (kind: string, id: string, held: object) => ({
    ...{ kind, id, revision: 1, createdAt: AT, updatedAt: AT, format: 1, state: 'a'.repeat(64), past: [] },
    content: held,
  });
  return JSON.stringify({
    ...{ stillroom: 'library', format: DOCUMENT_FORMAT, writtenAt: AT, withheld: {}, settings: null },
    library: { id: nextId(), name: 'Weir Lane' },
    records: [
      record('material', material.id, blankMaterial('Larkspur Oil', 'Limnanthes Alba Seed Oil')),
      record('formula', nextId(), { ...formula, archived: false }),
    ],
    ...{ history: [], states: [], versions: [], batches: [], issues: [], numbers: [], attachments: [] },
  });
}

/** Compares an empty library with a file. @throws Problem where it cannot be taken */
export async function meetsFile(text: string): Promise<Met> {
  const ours = await emptyLibrary();
  const bytes = ours.exportBytes();
  ours.close();
  const other = { kind: 'file' as const, bytes: new TextEncoder().encode(text), name: '' };
  const met = (await performMeeting({ kind: 'begin', meeting: 'm', ours: bytes, other, at: AT })) as Met;
  await performMeeting({ kind: 'end', meeting: 'm' });
  return met;
}
