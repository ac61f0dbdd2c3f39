import { batchPlan, type BatchPlan } from '@core/batches/batch';
import { batchLines, type PlannedBatch } from '@core/batches/plan-batch';
import { USUAL_LIMIT_PPM } from '@core/batches/small-lines';
import type { FormulaVersion } from '@core/formulas/formula';
import { MASS_UNITS } from '@core/locale/mass';
import { Problem } from '@core/problems/problem';
import { ppmFromPercent } from '@core/quantities/share';
import { MG_PER_G } from '@core/quantities/mass';
import { computed, reactive, watch, type Ref } from 'vue';
import { useSettings } from '../settings/store';

/** A unit is filled by mass, or by volume through the density of the product. */
export const FILL_UNITS = ['g', 'mL'] as const;
export const BATCH_UNITS = ['g', 'kg'] as const;

/** What the form holds, in the units that a maker types. */
export interface PlanEntry {
  by: 'mass' | 'units';
  mass: number | null;
  massUnit: (typeof BATCH_UNITS)[number];
  units: number | null;
  /** Of each unit, in `fillUnit`. */
  fill: number | null;
  fillUnit: (typeof FILL_UNITS)[number];
  /** g/mL, where the fill is a volume. */
  density: number | null;
  overagePercent: number | null;
  /** g. */
  readability: number | null;
  /** What a line may miss by weighing before it is called out, %. */
  limitPercent: number | null;
  note: string;
}

type Outcome =
  | { plan: BatchPlan; planned: PlannedBatch; faults: Record<string, string> }
  | { planned: null; faults: Record<string, string> };

function sizeOf(entry: PlanEntry): unknown {
  if (entry.by === 'mass')
    return { by: 'mass', massMg: Math.round((entry.mass ?? 0) * MASS_UNITS[entry.massUnit]) };
  const perUnit = entry.fillUnit === 'g' ? 1 : (entry.density ?? 0);
  const fillMg = Math.round((entry.fill ?? 0) * perUnit * MG_PER_G);
  return { by: 'units', units: entry.units ?? 0, fillMg };
}

/** The planned batch of what was entered, or what is wrong with it, by field. */
function outcome(
  entry: PlanEntry,
  version: FormulaVersion | null,
  region: ReturnType<typeof useSettings>['current']['languageRegion'],
): Outcome {
  if (!version) return { planned: null, faults: {} };
  const read = batchPlan.safeParse({
    versionId: version.id,
    size: sizeOf(entry),
    overagePpm: ppmFromPercent(entry.overagePercent ?? 0),
    readabilityMg: Math.round((entry.readability ?? 0) * MG_PER_G),
    note: entry.note,
  });
  if (!read.success)
    return {
      planned: null,
      faults: Object.fromEntries(read.error.issues.map((issue) => [issue.path.join('.'), issue.message])),
    };
  const limitPpm = entry.limitPercent ? ppmFromPercent(entry.limitPercent) : USUAL_LIMIT_PPM;
  try {
    return { plan: read.data, planned: batchLines(version.content, read.data, region, limitPpm), faults: {} };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const path = error.fields[0]?.path ?? 'phases';
    return { planned: null, faults: { [path]: `${error.message} ${error.advice}` } };
  }
}

/** The form for planning a batch of a version; its preview follows what is typed. */
export function usePlanForm(version: Ref<FormulaVersion | null>) {
  const settings = useSettings();
  const { readabilityMg, overagePpm } = settings.current;
  const entry = reactive<PlanEntry>({
    by: 'mass',
    mass: 1,
    massUnit: 'kg',
    units: 50,
    fill: 50,
    fillUnit: 'g',
    density: null,
    overagePercent: overagePpm / 10_000,
    readability: readabilityMg / MG_PER_G,
    limitPercent: USUAL_LIMIT_PPM / 10_000,
    note: '',
  });
  // A volume is filled at the middle of the version's own target density, unless another was measured.
  watch(version, (now) => {
    const { densityLow = null, densityHigh = null } = now?.content.target ?? {};
    const [low, high] = [densityLow ?? densityHigh, densityHigh ?? densityLow];
    entry.density = low === null || high === null ? null : (low + high) / 2;
  });
  const result = computed(() => outcome(entry, version.value, settings.current.languageRegion));
  const fault = (path: string): string | null => result.value.faults[path] ?? null;
  return { entry, result, fault };
}
