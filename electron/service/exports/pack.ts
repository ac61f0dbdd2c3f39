import { basename } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { formulaLines } from '@core/formulas/shares';
import type { PackRequest } from '@core/packs/pack';
import { Problem } from '@core/problems/problem';
import { formulaRecords, readFormula } from '@db/formulas/drafts';
import { materialRecords } from '@db/materials/materials';
import { putState } from '@db/record/state';
import { readSettings } from '@db/settings/settings';
import type { ServiceContext } from '../context';
import { keepOngoing } from '../record/keep-ongoing';
import { writeExport, type ExportJob } from './job';

const AT_ONCE = 50;

function run(context: ServiceContext, job: ExportJob, signal: AbortSignal): Promise<Uint8Array> {
  return context.exporting?.run(job, signal) ?? writeExport(job);
}

async function ofLibrary(context: ServiceContext, request: PackRequest | null) {
  const { library } = context.session.current();
  const { bytes } = await library.snapshot();
  const parts = {
    id: library.id,
    name: basename(library.folder),
    writtenAt: context.now().toISOString(),
  };
  return { library: bytes, parts, request };
}

/** The whole library as a document. */
export async function wholeLibrary(context: ServiceContext, signal: AbortSignal): Promise<Uint8Array> {
  // What cannot be written leaves all the same.
  await keepOngoing(context).catch(() => undefined);
  return run(context, { kind: 'document', ...(await ofLibrary(context, null)) }, signal);
}

/**
 * Keeps the states that leave the library: when what was made of them comes back, they are what both sides began with.
 * A library that cannot be written is sent all the same.
 */
async function keepSent(context: ServiceContext, { materials, formulas }: PackRequest): Promise<void> {
  const { library } = context.session.current();
  if (library.readOnly) return;
  const used = formulas.flatMap((id) => {
    const formula = readFormula(library, id);
    return formula ? formulaLines(formula).map(({ materialId }) => materialId) : [];
  });
  const sent = [
    ...[...new Set([...materials, ...used])].map((id) => ({ id, repository: materialRecords })),
    ...formulas.map((id) => ({ id, repository: formulaRecords })),
  ];
  for (let at = 0; at < sent.length; at += AT_ONCE) {
    library.transaction((tx) => {
      for (const { id, repository } of sent.slice(at, at + AT_ONCE)) {
        const record = repository.read(tx, id);
        if (record) putState(tx, repository.noun as never, id, repository.noun.read(record));
      }
    });
    await setImmediate();
  }
}

/** The chosen records with all that they use, as a pack or a document. @throws Problem where nothing was chosen */
export async function makePack(
  context: ServiceContext,
  request: PackRequest,
  signal: AbortSignal,
): Promise<Uint8Array> {
  if (request.materials.length + request.formulas.length === 0)
    throw new Problem({
      code: 'invalid-input',
      title: 'Nothing was chosen.',
      advice: 'Choose the materials and formulas that are to go into the file.',
    });
  const { library } = context.session.current();
  await keepSent(context, request);
  const of = await ofLibrary(context, request);
  if (request.format === 'json') return run(context, { kind: 'document', ...of }, signal);
  const { makerName, recordedBy } = readSettings(library);
  const by = recordedBy || makerName;
  return run(context, { kind: 'pack', title: request.title, by, folder: library.folder, ...of }, signal);
}
