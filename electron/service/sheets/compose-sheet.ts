import { calculate } from '@core/calculations/calculation';
import { materialsOf } from '@core/calculations/calculation-request';
import { formulaContent } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { batchSheet } from '@core/sheets/batch-sheet';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import { comparisonSheet } from '@core/sheets/comparison-sheet';
import { formulaSheet, type PrintedFormula } from '@core/sheets/formula-sheet';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { materialSheet } from '@core/sheets/material-sheet';
import { sheetFileName, type SheetRequest } from '@core/sheets/requests';
import type { Settings } from '@core/settings/settings';
import { formulaLines } from '@core/formulas/shares';
import { readBatch } from '@db/batches/batches';
import { readFormula } from '@db/formulas/drafts';
import { readVersion } from '@db/formulas/versions';
import { readMaterial, readMaterials } from '@db/materials/read';
import { readSettings } from '@db/settings/settings';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import { composeTrials } from './compose-trials';
import { composeWorking } from './compose-working';
import { photoDataUrl } from './photo-data';

export interface ComposedSheet {
  definition: SheetDefinition;
  fileName: string;
}

type RequestOf<K extends SheetRequest['kind']> = Extract<SheetRequest, { kind: K }>;

/** Reads what a sheet is of, and sets it as data for the printer. @throws Problem `not-found` */
export async function composeSheet(
  context: ServiceContext,
  request: SheetRequest,
  now: Date,
): Promise<ComposedSheet> {
  const { library } = context.session.current();
  const stored = readSettings(library);
  const settings = { ...stored, paperSize: request.paperSize ?? stored.paperSize };
  const printedAt = now.toISOString();
  switch (request.kind) {
    case 'material':
      return composeMaterial(context, request, settings, printedAt);
    case 'formula':
      return composeFormula(context, request, settings, printedAt);
    case 'batch':
      return composeBatch(context, request, settings, printedAt);
    case 'comparison':
      return composeComparison(context, request, settings, printedAt);
    case 'trials':
      return composeTrials(context, request.seriesId, settings, printedAt);
    case 'working':
      return composeWorking(context, request.bench, settings, printedAt);
    case 'calculation':
      return composeCalculation(context, request, settings, printedAt);
  }
}

async function composeMaterial(
  context: ServiceContext,
  request: RequestOf<'material'>,
  settings: Settings,
  at: string,
): Promise<ComposedSheet> {
  const { library } = context.session.current();
  const material = found(readMaterial(library, request.materialId), 'raw material');
  const photo = await photoDataUrl(library, material.photo);
  return {
    definition: materialSheet(material, settings, at, photo),
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
  const materials = readMaterials(
    library,
    formulaLines(content).map((line) => line.materialId),
  );
  return { content, materials: Object.fromEntries(materials), version: null };
}

function composeFormula(
  context: ServiceContext,
  request: RequestOf<'formula'>,
  settings: Settings,
  at: string,
): ComposedSheet {
  const formula = printedFormula(context, request);
  const { forSharing, tradeNames } = request;
  const which = formula.version ? `version ${formula.version.number}` : 'draft';
  return {
    definition: formulaSheet(formula, { forSharing, tradeNames }, settings, at),
    fileName: sheetFileName('formula', [
      formula.content.code,
      formula.content.name,
      which,
      forSharing ? 'to share' : '',
    ]),
  };
}

function composeBatch(
  context: ServiceContext,
  request: RequestOf<'batch'>,
  settings: Settings,
  at: string,
): ComposedSheet {
  const { library } = context.session.current();
  const batch = found(readBatch(library, request.batchId), 'batch');
  const version = found(readVersion(library, batch.versionId), 'version');
  return {
    definition: batchSheet(batch, version, settings, at),
    fileName: sheetFileName('batch', [batch.number, version.content.name]),
  };
}

async function composeComparison(
  context: ServiceContext,
  request: RequestOf<'comparison'>,
  settings: Settings,
  at: string,
): Promise<ComposedSheet> {
  const { library } = context.session.current();
  const materials: Material[] = request.materialIds.map((id) =>
    found(readMaterial(library, id), 'raw material'),
  );
  const photos: Record<string, string> = {};
  for (const material of materials) {
    const photo = await photoDataUrl(library, material.photo);
    if (photo) photos[material.id] = photo;
  }
  const names = materials.slice(0, 3).map((material) => material.tradeName);
  return {
    definition: comparisonSheet(materials, settings, at, photos),
    fileName: sheetFileName('comparison', names),
  };
}

function composeCalculation(
  context: ServiceContext,
  { calculation }: RequestOf<'calculation'>,
  settings: Settings,
  at: string,
): ComposedSheet {
  const { library } = context.session.current();
  const calculated = calculate(calculation, readMaterials(library, materialsOf(calculation)));
  return {
    definition: calculationSheet(calculated, settings, at),
    fileName: sheetFileName('calculation', [calculated.title]),
  };
}
