import { formatPercent } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import type { Field } from '../record/field';
import { fieldWords } from '../record/words';
import { MARKET_FIELDS } from './market-fields';
import { alignedWith } from './aligned';
import { materialDifferences, type MaterialsOfSide } from './compare-materials';
import type { Difference } from './difference';
import { phaseLetter } from './formula';
import type { FormulaContent, FormulaLine, TargetSpecification } from './formula';
import { fileDifferences } from './compare-file';
import { stepDifferences } from './compare-steps';
import { pushText, withUnit, type Compared } from './compared';
import { movedOnes } from './moved-ones';
import { formulaLines, formulaShares } from './shares';

export type { Difference, DifferenceArea, DifferenceKind } from './difference';

interface PlacedLine {
  line: FormulaLine;
  ppm: number;
  phase: string;
  phaseId: string;
  /** Its place in the phase, from 0. */
  at: number;
  /** The material of the line before it in the phase; null for the first. */
  followsId: string | null;
}

type Pair = [PlacedLine | null, PlacedLine | null];

function placedLines(content: FormulaContent): PlacedLine[] {
  const { byLine } = formulaShares(content);
  return content.phases.flatMap((phase, index) =>
    phase.lines.map((line, at) => ({
      line,
      ppm: byLine.get(line.id) ?? 0,
      phase: phaseLetter(index),
      phaseId: phase.id,
      at,
      followsId: phase.lines[at - 1]?.materialId ?? null,
    })),
  );
}

/** Pairs by id first, then by material, so that a line taken out and put back is not two differences. */
function pairLines(before: PlacedLine[], after: PlacedLine[]): Pair[] {
  const left = new Set(before);
  const byId = new Map(before.map((one) => [one.line.id, one]));
  const pairs = after.map((one): Pair => {
    const same = byId.get(one.line.id);
    if (!same || same.line.materialId !== one.line.materialId) return [null, one];
    left.delete(same);
    return [same, one];
  });
  for (const pair of pairs) {
    if (pair[0] || !pair[1]) continue;
    const materialId = pair[1].line.materialId;
    pair[0] = [...left].find((one) => one.line.materialId === materialId) ?? null;
    if (pair[0]) left.delete(pair[0]);
  }
  return [...pairs, ...[...left].map((one): Pair => [one, null])];
}

function shareText(placed: PlacedLine, region: Region): string {
  return `${formatPercent(placed.ppm, region)}${placed.line.toHundred ? ' (q.s.)' : ''}`;
}

/** How far a share moved, absolute and of what it was. */
function shareChange(was: number, is: number): Pick<Difference, 'changePpm' | 'ratio'> {
  return { changePpm: is - was, ratio: was > 0 ? (is - was) / was : null };
}

/** Lines that stayed in their phase but stand elsewhere in it: the order of weighing and adding. */
function orderDifferences(pairs: readonly Pair[], nameOf: Compared['nameOf']): Difference[] {
  const stayed = pairs.flatMap(([was, is]) => (was && is && was.phaseId === is.phaseId ? [{ was, is }] : []));
  const where = ({ at, followsId, phase }: PlacedLine) =>
    `line ${at + 1} of phase ${phase}${followsId === null ? '' : `, after ${nameOf(followsId)}`}`;
  const phaseIds = new Set(stayed.map(({ is }) => is.phaseId));
  return [...phaseIds].flatMap((phaseId) => {
    const own = stayed.filter(({ is }) => is.phaseId === phaseId);
    const moved = movedOnes(own.map(({ was }) => was.at));
    return own
      .filter(({ was, is }, index) => moved[index] && where(was) !== where(is))
      .map(({ was, is }): Difference => {
        const what = nameOf(is.line.materialId);
        return { area: 'line', kind: 'moved', what, before: where(was), after: where(is) };
      });
  });
}

function lineDifferences({ before, after, nameOf, region }: Compared): Difference[] {
  const found: Difference[] = [];
  const pairs = pairLines(placedLines(before), placedLines(after));
  for (const [was, is] of pairs) {
    const what = nameOf((is ?? was)?.line.materialId ?? '');
    const where = (one: PlacedLine) => `${shareText(one, region)} in phase ${one.phase}`;
    const line = { area: 'line', what, ...shareChange(was?.ppm ?? 0, is?.ppm ?? 0) } as const;
    if (!was && is) found.push({ ...line, kind: 'added', before: '', after: where(is) });
    if (was && !is) found.push({ ...line, kind: 'removed', before: where(was), after: '' });
    if (!was || !is) continue;
    const shares = [shareText(was, region), shareText(is, region)] as const;
    if (shares[0] !== shares[1])
      found.push({ ...line, kind: 'changed', before: shares[0], after: shares[1] });
    // By id, not letter: a phase put in front renames the ones after it but moves nothing.
    if (was.phaseId !== is.phaseId)
      found.push({
        area: 'line',
        kind: 'moved',
        what,
        before: `phase ${was.phase}`,
        after: `phase ${is.phase}`,
      });
    pushText(found, 'line', `${what}, note`, was.line.note, is.line.note);
  }
  return [...found, ...orderDifferences(pairs, nameOf)];
}

function phaseDifferences({ before, after, region }: Compared): Difference[] {
  const found: Difference[] = [];
  const known = new Map(before.phases.map((phase, index) => [phase.id, { phase, index }]));
  const heat = (value: number | null) => withUnit(value, ' °C', region);
  after.phases.forEach((phase, index) => {
    const was = known.get(phase.id);
    known.delete(phase.id);
    const what = `Phase ${phaseLetter(index)}`;
    if (!was) {
      found.push({ area: 'phase', kind: 'added', what, before: '', after: phase.title || what });
      return;
    }
    pushText(found, 'phase', `${what}, title`, was.phase.title, phase.title);
    pushText(found, 'phase', `${what}, temperature`, heat(was.phase.temperatureC), heat(phase.temperatureC));
  });
  for (const { phase, index } of known.values()) {
    const what = `Phase ${phaseLetter(index)}`;
    found.push({ area: 'phase', kind: 'removed', what, before: phase.title || what, after: '' });
  }
  return [...found, ...phaseOrder(before, after)];
}

/** Phases that changed places: they are weighed and named in another order, whatever stands in them. */
function phaseOrder(before: FormulaContent, after: FormulaContent): Difference[] {
  const named = ({ phases }: FormulaContent, other: FormulaContent) =>
    phases.flatMap((phase, index) =>
      other.phases.some(({ id }) => id === phase.id)
        ? [{ id: phase.id, name: [phaseLetter(index), phase.title].filter(Boolean).join(' ') }]
        : [],
    );
  const [was, is] = [named(before, after), named(after, before)];
  if (was.every(({ id }, at) => id === is[at]?.id)) return [];
  const told = (phases: typeof was): string => phases.map(({ name }) => name).join(', ');
  return [{ area: 'phase', kind: 'moved', what: 'Order of the phases', before: told(was), after: told(is) }];
}

const TARGET_LABELS: Record<keyof TargetSpecification, [label: string, unit: string]> = {
  appearance: ['appearance', ''],
  odour: ['odour', ''],
  colour: ['colour', ''],
  phLow: ['pH, lowest', ''],
  phHigh: ['pH, highest', ''],
  viscosityLow: ['viscosity, lowest', ' mPa·s'],
  viscosityHigh: ['viscosity, highest', ' mPa·s'],
  viscosityMethod: ['viscosity method', ''],
  densityLow: ['density, lowest', ' g/mL'],
  densityHigh: ['density, highest', ' g/mL'],
  microbiology: ['microbiology', ''],
};

function targetDifferences({ before, after, region }: Compared): Difference[] {
  const found: Difference[] = [];
  for (const key of Object.keys(TARGET_LABELS) as (keyof TargetSpecification)[]) {
    const [label, unit] = TARGET_LABELS[key];
    const text = (value: string | number | null) =>
      typeof value === 'string' ? value : withUnit(value, unit, region);
    pushText(found, 'target', `Target, ${label}`, text(before.target[key]), text(after.target[key]));
  }
  return found;
}

function acceptedDifferences(before: FormulaContent, after: FormulaContent): Difference[] {
  const found: Difference[] = [];
  const was = new Map(before.accepted.map((one) => [one.id, one]));
  for (const one of after.accepted) {
    pushText(found, 'finding', `Accepted: ${one.says}`, was.get(one.id)?.reason ?? '', one.reason);
    was.delete(one.id);
  }
  for (const one of was.values()) pushText(found, 'finding', `Accepted: ${one.says}`, one.reason, '');
  return found;
}

/**
 * What a reader would say changed from one version of a formula to the next, in the order of the formula.
 * Lines are matched by id, then by material; a material swapped on a line reads as one removed, one added. Phases and
 * steps are matched by id, and by their places where the formulas have none in common.
 *
 * @param nameOf a material's trade name, also for one that has left the library
 * @param materials the materials of each side: a version's as it froze them, a draft's as they are now
 */
export function compareVersions(
  before: FormulaContent,
  compareTo: FormulaContent,
  nameOf: (materialId: string) => string,
  region: Region = 'en-GB',
  materials: { before: MaterialsOfSide; after: MaterialsOfSide } = { before: {}, after: {} },
): Difference[] {
  const after = alignedWith(before, compareTo);
  const compared = { before, after, nameOf, region };
  const found: Difference[] = [];
  for (const key of ['name', 'code', 'productType', 'use', 'purpose'] as const) {
    const what = key === 'productType' ? 'Product type' : key.charAt(0).toUpperCase() + key.slice(1);
    pushText(found, 'formula', what, before[key], after[key]);
  }
  for (const [key, field] of Object.entries(MARKET_FIELDS)) {
    const words = ({ market }: FormulaContent): string =>
      fieldWords(field as Field, market[key as keyof typeof MARKET_FIELDS], region);
    pushText(found, 'formula', field.label, words(before), words(after));
  }
  found.push(...phaseDifferences(compared), ...lineDifferences(compared));
  const usedBefore = new Set(formulaLines(before).map((line) => line.materialId));
  const shared = new Set(
    formulaLines(after).flatMap((line) => (usedBefore.has(line.materialId) ? [line.materialId] : [])),
  );
  found.push(...materialDifferences([...shared], materials.before, materials.after, region));
  found.push(...stepDifferences(compared), ...targetDifferences(compared));
  found.push(...acceptedDifferences(before, after), ...fileDifferences(before, after, region));
  pushText(found, 'notes', 'Notes', before.notes, after.notes);
  return found;
}
