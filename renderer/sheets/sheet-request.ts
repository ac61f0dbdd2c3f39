import type { sheetRequest } from '@core/sheets/requests';
import { z } from 'zod';
import { answer, service, ServiceProblem, type ProblemDetails } from '../service/client';

/** What a sheet is asked for of, and how; what is left out is as usual. */
export type SheetRequest = z.input<typeof sheetRequest>;

export interface Sheet {
  bytes: Uint8Array<ArrayBuffer>;
  fileName: string;
}

/** The file name of a Content-Disposition header; its `filename*` comes before its plain one (RFC 6266). */
export function fileNameIn(header: string | null): string | null {
  const extended = /filename\*=UTF-8''([^;]+)/i.exec(header ?? '')?.[1];
  const plain = /filename="([^"]+)"/i.exec(header ?? '')?.[1];
  try {
    return extended ? decodeURIComponent(extended) : (plain ?? null);
  } catch {
    return plain ?? null;
  }
}

/** A sheet as PDF. @throws ServiceProblem when it cannot be made, `unprintable-text` among the reasons */
export async function fetchSheet(request: SheetRequest, signal?: AbortSignal): Promise<Sheet> {
  const response = await fetch('/api/sheets', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(request),
    signal,
  });
  // A refusal is thrown by `answer` as everywhere else.
  if (!response.ok) await answer(Promise.resolve(response));
  const bytes = new Uint8Array(await response.arrayBuffer());
  return { bytes, fileName: fileNameIn(response.headers.get('Content-Disposition')) ?? 'sheet.pdf' };
}

/** What a request is about, by name, for saying that its sheet could not be made. */
export async function subjectName(request: SheetRequest): Promise<string> {
  try {
    if (request.kind === 'material')
      return (await answer(service.materials[':id'].$get({ param: { id: request.materialId } }))).tradeName;
    if (request.kind === 'formula' || request.kind === 'label' || request.kind === 'exposure')
      return (await answer(service.formulas[':id'].$get({ param: { id: request.formulaId } }))).formula.name;
    if (request.kind === 'file' || request.kind === 'part') {
      const param = { versionId: request.versionId };
      return (await answer(service.formulas.versions[':versionId'].$get({ param }))).content.name;
    }
    if (request.kind === 'batch')
      return (await answer(service.batches[':id'].$get({ param: { id: request.batchId } }))).batch.number;
    return 'Comparison';
  } catch (error) {
    // The name is a help only; the sheet's own problem is shown with it.
    return error instanceof ServiceProblem ? 'A sheet of something no longer in the library' : 'A sheet';
  }
}

const unprintable = z.array(z.object({ character: z.string(), code: z.string() }));

/** The signs that the sheets' typeface lacks, each with its code. */
export function unprintableIn(problem: ProblemDetails): string[] {
  const found = unprintable.safeParse(problem.facts.characters);
  return found.success ? found.data.map(({ character, code }) => `${character} (${code})`) : [];
}
