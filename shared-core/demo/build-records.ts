import type { Batch, BatchPlan } from '../batches/batch';
import type { BatchOutcome } from '../batches/outcome';
import { batchLines } from '../batches/plan-batch';
import { formulaContent, type Formula, type FormulaVersion } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import type { Material } from '../materials/material';
import type { MakeId } from './demo-id';
import { NEVER_MADE } from './never-made';

interface DemoBatch extends Pick<BatchPlan, 'size' | 'overagePpm' | 'readabilityMg'> {
  /** The formula's code. */
  of: string;
  why: string;
  /** What came of it: the day, the bulk obtained in g, the units filled. */
  outcome?: [finishedOn: string, grams: number, units: number | null];
}

const GRAM = 1000;

/** Batches as a small maker would have planned them: by mass, and by units filled. */
const BATCHES: readonly DemoBatch[] = [
  {
    of: 'F-009',
    why: 'For a class of twelve.',
    size: { by: 'mass', massMg: 600 * GRAM },
    overagePpm: 20_000,
    readabilityMg: 10,
    outcome: ['2026-09-03', 596.4, null],
  },
  {
    of: 'F-009',
    why: 'For the winter fair.',
    size: { by: 'units', units: 60, fillMg: 50 * GRAM },
    overagePpm: 30_000,
    readabilityMg: 100,
    outcome: ['2026-09-08', 3021.5, 60],
  },
  {
    of: 'F-003',
    why: 'A trial of the stirrer.',
    size: { by: 'mass', massMg: 5_000 * GRAM },
    overagePpm: 20_000,
    readabilityMg: 100,
  },
];

export interface DemoRecords {
  versions: FormulaVersion[];
  batches: Batch[];
  /** What came of batches, by their id. */
  outcomes: Map<string, BatchOutcome>;
}

function outcomesOf(batches: readonly Batch[]): Map<string, BatchOutcome> {
  const told = batches.flatMap(({ id }, index): [string, BatchOutcome][] => {
    const outcome = BATCHES[index]?.outcome;
    if (!outcome) return [];
    const [finishedOn, grams, unitsFilled] = outcome;
    const made = {
      ...{ finishedOn, obtainedMg: Math.round(grams * GRAM), unitsFilled, by: 'A. Demonstrator' },
      ...{ remarks: 'Invented, as the batch is.', at: `${finishedOn}T16:00:00.000Z` },
    };
    return [[id, made]];
  });
  return new Map(told);
}

/** The versions that the demonstration has recorded, and the batches that were planned of them. */
export function buildRecords(
  formulas: readonly Formula[],
  materials: readonly Material[],
  makeId: MakeId,
  at: string,
): DemoRecords {
  const byId = new Map(materials.map((material) => [material.id, material]));
  const recorded = (code: string): FormulaVersion => {
    const formula = formulas.find((one) => one.code === code);
    if (!formula) throw new Error(`No demonstration formula has the code ${code}.`);
    const content = formulaContent.parse(formula);
    const used = formulaLines(content).flatMap((line) => byId.get(line.materialId) ?? []);
    return {
      id: makeId(`version:${code}`),
      formulaId: formula.id,
      number: 1,
      recordedAt: at,
      recordedBy: 'A. Demonstrator',
      reason: 'As it is taught',
      content,
      materials: Object.fromEntries(used.map((material) => [material.id, material])),
    };
  };
  const versions = new Map([...new Set(BATCHES.map(({ of }) => of))].map((code) => [code, recorded(code)]));
  const batches = BATCHES.map(({ of, why, outcome, ...plan }, index): Batch => {
    const version = versions.get(of);
    if (!version) throw new Error(`No version of ${of} is recorded.`);
    return {
      ...plan,
      ...batchLines(version.content, plan),
      id: makeId(`batch:${index}`),
      number: `B-00${index + 1}`,
      versionId: version.id,
      // A minute apart, so that the latest is known.
      createdAt: new Date(Date.parse(at) + index * 60_000).toISOString(),
      note: `${why} Invented for demonstration, ${NEVER_MADE}${outcome ? '; what came of it is invented too' : ''}.`,
    };
  });
  return { versions: [...versions.values()], batches, outcomes: outcomesOf(batches) };
}
