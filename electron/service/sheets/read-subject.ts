import { materialsOf } from '@core/calculators/calculation-request';
import { calculate } from '@core/calculators/calculation';
import { formulaContent } from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';
import type { PrintedFormula } from '@core/sheets/formula-sheet';
import type { SheetPhoto } from '@core/sheets/photo';
import { forSharing as shareable } from '@core/sheets/sharing';
import { sheetFileName, type SheetRequest } from '@core/sheets/requests';
import { readBatch } from '@db/batches/batches';
import { readFormula } from '@db/formulas/drafts';
import { readVersion } from '@db/formulas/versions';
import { readMaterial, readMaterials } from '@db/materials/materials';
import { readSeries } from '@db/trials/trials';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import type { SheetSubject } from './job';
import { sheetPhoto } from './photo-data';

type RequestOf<K extends SheetRequest['kind']> = Extract<SheetRequest, { kind: K }>;

export interface ReadSubject {
  subject: SheetSubject;
  fileName: string;
}

/** Reads from the library what a sheet is of. @throws Problem `not-found` */
export async function readSubject(context: ServiceContext, request: SheetRequest): Promise<ReadSubject> {
  switch (request.kind) {
    case 'material':
      return readMaterialSubject(context, request);
    case 'formula':
      return readFormulaSubject(context, request);
    case 'batch':
      return readBatchSubject(context, request);
    case 'comparison':
      return readComparison(context, request);
    case 'trials':
      return readTrials(context, request);
    case 'working':
      return readWorking(context, request);
    case 'calculation':
      return readCalculation(context, request);
  }
}

function everyMaterial(context: ServiceContext, ids: readonly string[]): Record<string, Material> {
  const { library } = context.session.current();
  return Object.fromEntries(
    [...new Set(ids)].map((id) => [id, found(readMaterial(library, id), 'raw material')]),
  );
}

async function readMaterialSubject(
  context: ServiceContext,
  request: RequestOf<'material'>,
): Promise<ReadSubject> {
  const { library } = context.session.current();
  const material = found(readMaterial(library, request.materialId), 'raw material');
  const photo = await sheetPhoto(library, material.photo);
  return {
    subject: { kind: 'material', material, photo },
    fileName: sheetFileName('material', [material.tradeName]),
  };
}

function printedFormula(context: ServiceContext, request: RequestOf<'formula'>): PrintedFormula {
  const { library } = context.session.current();
  if (request.versionId !== null) {
    const { content, materials, ...version } = found(readVersion(library, request.versionId), 'version');
    return { content, materials, version };
  }
  const content = formulaContent.parse(found(readFormula(library, request.formulaId), 'formula'));
  const ids = formulaLines(content).map((line) => line.materialId);
  return { content, materials: Object.fromEntries(readMaterials(library, ids)), version: null };
}

function readFormulaSubject(context: ServiceContext, request: RequestOf<'formula'>): ReadSubject {
  const formula = printedFormula(context, request);
  const { forSharing, tradeNames } = request;
  const { content, materials } = formula;
  // The name of the file is shared along with it.
  const { code, name } = forSharing ? shareable(content, materials, tradeNames) : content;
  const which = formula.version ? `version ${formula.version.number}` : 'draft';
  return {
    subject: { kind: 'formula', formula, options: { forSharing, tradeNames } },
    fileName: sheetFileName('formula', [code, name, which, forSharing ? 'to share' : '']),
  };
}

function readBatchSubject(context: ServiceContext, request: RequestOf<'batch'>): ReadSubject {
  const { library } = context.session.current();
  const batch = found(readBatch(library, request.batchId), 'batch');
  const version = found(readVersion(library, batch.versionId), 'version');
  return {
    subject: { kind: 'batch', batch, version },
    fileName: sheetFileName('batch', [batch.number, version.content.name]),
  };
}

async function readComparison(
  context: ServiceContext,
  request: RequestOf<'comparison'>,
): Promise<ReadSubject> {
  const { library } = context.session.current();
  const byId = everyMaterial(context, request.materialIds);
  const materials = Object.values(byId);
  const photos: Record<string, SheetPhoto> = {};
  for (const material of materials) {
    const photo = await sheetPhoto(library, material.photo);
    if (photo) photos[material.id] = photo;
  }
  const names = materials.slice(0, 3).map((material) => material.tradeName);
  return { subject: { kind: 'comparison', materials, photos }, fileName: sheetFileName('comparison', names) };
}

function readTrials(context: ServiceContext, request: RequestOf<'trials'>): ReadSubject {
  const { library } = context.session.current();
  const series = found(readSeries(library, request.seriesId), 'trial series');
  const ids = series.trials.flatMap((trial) => trial.lines.map((line) => line.materialId));
  const materials = Object.fromEntries(readMaterials(library, ids));
  return {
    subject: { kind: 'trials', series, materials },
    fileName: sheetFileName('trials', [series.title]),
  };
}

function readWorking(context: ServiceContext, { bench }: RequestOf<'working'>): ReadSubject {
  const lines = [...bench.oils, ...bench.emulsifiers, ...bench.rest];
  const materials = everyMaterial(
    context,
    lines.map((line) => line.materialId),
  );
  return {
    subject: { kind: 'working', state: bench, materials },
    fileName: sheetFileName('working', [bench.title || 'system']),
  };
}

function readCalculation(context: ServiceContext, { calculation }: RequestOf<'calculation'>): ReadSubject {
  const { library } = context.session.current();
  const known = readMaterials(library, materialsOf(calculation));
  const { title } = calculate(calculation, known);
  return {
    subject: { kind: 'calculation', calculation, materials: Object.fromEntries(known) },
    fileName: sheetFileName('calculation', [title]),
  };
}
