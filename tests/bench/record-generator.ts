import type { Formula } from '@core/formulas/formula';
import { FORMULA } from '@core/formulas/noun';
import { formulaLines } from '@core/formulas/shares';
import { MATERIAL } from '@core/materials/noun';
import type { Material } from '@core/materials/material';
import { insertBatch } from '@db/batches/batches';
import { writeFormula } from '@db/formulas/drafts';
import type { Engine } from '@db/library/sql/engine';
import { materials as shelf } from '@db/materials/materials';
import { putState } from '@db/record/state';
import { generateFormulas } from './formula-generator';
import { generateMaterials, numberedId } from './library-generator';
import { Seeded } from './seeded';

/** How much a library holds. */
export interface Extent {
  materials: number;
  formulas: number;
  /** In all, shared out evenly. */
  versions: number;
  batches: number;
  /** Lines of each formula; any number when null. */
  lines: number | null;
}

/** A personal library after twenty years of work, as far as its nouns are built. */
export const TWENTY_YEARS: Extent = {
  materials: 5_000,
  formulas: 2_000,
  versions: 10_000,
  batches: 20_000,
  lines: 20,
};
/** What thirty versions of a formula with one water must not cost. */
export const MANY_VERSIONS: Extent = {
  materials: 500,
  formulas: 500,
  versions: 10_000,
  batches: 0,
  lines: 20,
};

const DAY_MS = 86_400_000;
const BEGAN = Date.parse('2006-01-02T08:00:00.000Z');

function momentOf(share: number): string {
  return new Date(BEGAN + Math.floor(share * 20 * 365) * DAY_MS).toISOString();
}

interface Recorded {
  id: string;
  formula: Formula;
}

/** The formula as it stood at one of its versions: each moved a share or a note on. */
function atVersion(formula: Formula, number: number, chance: Seeded): Formula {
  const lines = formulaLines(formula).filter((line) => !line.toHundred);
  const moved = chance.pick(lines.length > 0 ? lines : formulaLines(formula));
  const phases = formula.phases.map((phase) => ({
    ...phase,
    lines: phase.lines.map((line) => (line.id === moved.id ? { ...line, ppm: line.ppm + number } : line)),
  }));
  return { ...formula, phases, notes: `Trial ${number}` };
}

function recordVersion(
  engine: Engine,
  seq: number,
  number: number,
  of: Formula,
  at: string,
  states: number[],
) {
  const state = putState(engine, FORMULA, of.id, FORMULA.read(of));
  const id = numberedId(4, seq);
  engine.run(
    `INSERT INTO formula_version (seq, id, formula_id, number, recorded_at, recorded_by, reason, state)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[seq, id, of.id, number, at, 'A. Maker', 'Adjusted after a trial', state],
  );
  for (const material of new Set(states))
    engine.run(
      'INSERT INTO formula_version_state (version, state, revision) VALUES (?, ?, ?)',
      seq,
      material,
      1,
    );
  return id;
}

/** The states that each material has been in: most never changed, some did every few years. */
function materialStates(
  engine: Engine,
  materials: readonly Material[],
  chance: Seeded,
): Map<string, number[]> {
  return new Map(
    materials.map((material) => {
      const earlier = Array.from({ length: chance.chance(0.2) ? chance.whole(1, 4) : 0 }, (_, year) =>
        putState(
          engine,
          MATERIAL,
          material.id,
          MATERIAL.read({ ...material, notes: `As of ${2010 + year}` }),
        ),
      );
      return [material.id, [...earlier, putState(engine, MATERIAL, material.id, MATERIAL.read(material))]];
    }),
  );
}

function fillVersions(
  engine: Engine,
  extent: Extent,
  formulas: readonly Formula[],
  states: Map<string, number[]>,
) {
  const chance = new Seeded(7);
  const recorded: Recorded[] = [];
  for (let seq = 1; seq <= extent.versions; seq++) {
    const formula = formulas[(seq - 1) % formulas.length]!;
    const number = Math.floor((seq - 1) / formulas.length) + 1;
    const share = seq / extent.versions;
    const used = formulaLines(formula).map((line) => {
      const held = states.get(line.materialId)!;
      return held[Math.min(held.length - 1, Math.floor(share * held.length))]!;
    });
    const at = atVersion(formula, number, chance);
    recorded.push({ id: recordVersion(engine, seq, number, at, momentOf(share), used), formula: at });
  }
  return recorded;
}

function fillBatches(engine: Engine, count: number, versions: readonly Recorded[]): void {
  const chance = new Seeded(8);
  for (let index = 0; index < count; index++) {
    const { id, formula } = versions[chance.whole(0, versions.length - 1)]!;
    const massMg = chance.whole(1, 400) * 100_000;
    insertBatch(engine, {
      id: numberedId(5, index),
      number: `B-${String(index + 1).padStart(5, '0')}`,
      versionId: id,
      createdAt: momentOf(index / count),
      size: { by: 'mass', massMg },
      overagePpm: 20_000,
      readabilityMg: 10,
      note: '',
      totalMg: massMg,
      lines: formulaLines(formula).map((line) => ({
        lineId: line.id,
        materialId: line.materialId,
        targetMg: Math.round((massMg * line.ppm) / 1_000_000),
      })),
    });
  }
}

/** Fills an empty library with what a seed gives: the same every time. */
export function fillRecord(engine: Engine, extent: Extent): void {
  const materials = [...generateMaterials(extent.materials)];
  for (const each of materials) shelf.insert(engine, each);
  const formulas = [...generateFormulas(extent.formulas, extent.materials, 2, extent.lines)];
  for (const each of formulas) writeFormula(engine, each);
  const states = materialStates(engine, materials, new Seeded(6));
  fillBatches(engine, extent.batches, fillVersions(engine, extent, formulas, states));
}
