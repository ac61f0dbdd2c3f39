import { blankProductFile } from '@core/formulas/product-file';
import type { Finding } from '@core/checks/check';
import { checkFormula } from '@core/checks/all';
import { blankTarget, type FormulaContent, type FormulaPhase } from '@core/formulas/formula';
import { blankMarket } from '@core/products/market';
import type { Figure, FigureKind } from '@core/materials/figure';
import { blankMaterial, type Material, type MaterialContent } from '@core/materials/material';

let counter = 0;

/** A UUID-shaped identifier, a new one each time, the same ones in every run. */
export function nextId(): string {
  counter += 1;
  return `01900000-0000-7000-8000-${counter.toString(16).padStart(12, '0')}`;
}

export function figure(value: number, low: number | null = null, high: number | null = null): Figure {
  return { low, value, high, provenance: 'supplier', source: 'invented for this test' };
}

export function range(low: number | null, high: number | null): Figure {
  return { low, value: null, high, provenance: 'supplier', source: 'invented for this test' };
}

type Parts = Partial<Omit<MaterialContent, 'figures'>> & { figures?: Partial<Record<FigureKind, Figure>> };

/** An invented material over a real INCI name. */
export function make(tradeName: string, inci: string | string[], parts: Parts = {}): Material {
  const names = Array.isArray(inci) ? inci : [inci];
  const share = Math.floor(1_000_000 / names.length);
  return {
    ...blankMaterial(tradeName, names[0] ?? ''),
    composition: names.map((name) => ({ inci: name, lowPpm: share, highPpm: share })),
    ...parts,
    figures: parts.figures ?? {},
    id: nextId(),
    revision: 1,
    createdAt: '2026-01-01T00:00:00.000Z',
    updatedAt: '2026-01-01T00:00:00.000Z',
  };
}

export type Row = [material: Material, percent: number];

/** A phase of materials at per cent. */
export function phase(rows: Row[], temperatureC: number | null = null): FormulaPhase {
  return {
    id: nextId(),
    title: '',
    temperatureC,
    lines: rows.map(([one, percent]) => ({
      id: nextId(),
      materialId: one.id,
      ppm: Math.round(percent * 10_000),
      toHundred: false,
      note: '',
    })),
  };
}

export function content(phases: FormulaPhase[], parts: Partial<FormulaContent> = {}): FormulaContent {
  return {
    code: 'F-1',
    name: 'Trial',
    productType: 'o/w emulsion',
    use: 'leave-on',
    purpose: '',
    market: blankMarket(),
    phases,
    steps: [],
    target: blankTarget(),
    accepted: [],
    ...blankProductFile(),
    notes: '',
    ...parts,
  };
}

/** What one rule finds in a formula over these materials. */
export function findings(ruleId: string, formula: FormulaContent, materials: Material[]): Finding[] {
  const map = new Map(materials.map((one) => [one.id, one]));
  return checkFormula({ content: formula, materials: map }).filter((finding) => finding.ruleId === ruleId);
}

/** The same, with all materials in one phase. */
export function findingsOf(ruleId: string, rows: Row[], parts: Partial<FormulaContent> = {}): Finding[] {
  return findings(
    ruleId,
    content([phase(rows)], parts),
    rows.map(([one]) => one),
  );
}
