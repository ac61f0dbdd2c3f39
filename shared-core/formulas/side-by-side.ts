import { formatNumber, type Region } from '../locale/numbers';
import { targetFacts } from '../sheets/target-words';
import { phaseLetter, type FormulaContent, type ProcedureStep } from './formula';
import { formulaLines, formulaShares } from './shares';

/** What a formula has of one material; null where it has none. */
export interface ShareOfOne {
  ppm: number;
  /** The letters of the phases in which it stands. */
  phases: string;
  toHundred: boolean;
}

/** A material of several formulas, with its share in each, in their order. */
export interface SharedLine {
  materialId: string;
  shares: (ShareOfOne | null)[];
  differs: boolean;
}

/** One thing told of several formulas, in their order. */
export interface SharedFact {
  label: string;
  values: string[];
  differs: boolean;
}

const differ = (values: readonly unknown[]): boolean => new Set(values).size > 1;

function shareOf(content: FormulaContent, materialId: string): ShareOfOne | null {
  const { byLine } = formulaShares(content);
  const own = formulaLines(content).filter((line) => line.materialId === materialId);
  if (own.length === 0) return null;
  const letters = content.phases.flatMap((phase, at) =>
    phase.lines.some((line) => line.materialId === materialId) ? [phaseLetter(at)] : [],
  );
  return {
    ppm: own.reduce((sum, line) => sum + (byLine.get(line.id) ?? 0), 0),
    phases: letters.join(', '),
    toHundred: own.some((line) => line.toHundred),
  };
}

/** The materials of several formulas, each once: in the order of the first, then what the others have besides. */
export function sharedLines(formulas: readonly FormulaContent[]): SharedLine[] {
  const ids = new Set(formulas.flatMap((content) => formulaLines(content).map((line) => line.materialId)));
  return [...ids].map((materialId) => {
    const shares = formulas.map((content) => shareOf(content, materialId));
    return { materialId, shares, differs: differ(shares.map((share) => share?.ppm)) };
  });
}

function stepText(content: FormulaContent, step: ProcedureStep | undefined, region: Region): string {
  if (!step) return '';
  const letters = content.phases.flatMap((phase, at) =>
    step.phaseIds.includes(phase.id) ? [phaseLetter(at)] : [],
  );
  const figures = [
    [step.temperatureC, '°C'],
    [step.speedRpm, 'rpm'],
    [step.minutes, 'min'],
  ] as const;
  const told = figures.flatMap(([value, unit]) =>
    value === null ? [] : [`${formatNumber(value, region)}\u00a0${unit}`],
  );
  const head = letters.length > 0 ? `${letters.join(', ')}: ` : '';
  return [`${head}${step.instruction}`, told.join(', ')].filter(Boolean).join(' · ');
}

/** What else several formulas say, a row each; what none of them says is left out. */
export function sharedFacts(formulas: readonly FormulaContent[], region: Region): SharedFact[] {
  const rows = formulas.map((content) => [
    { label: 'Product type', value: content.productType as string },
    { label: 'Use', value: content.use as string },
    { label: 'Purpose', value: content.purpose },
    ...targetFacts(content.target, region).map(({ label, value }) => ({ label: `Target: ${label}`, value })),
  ]);
  const told = (rows[0] ?? []).map(({ label }, at) => {
    const values = rows.map((row) => row[at]?.value ?? '');
    return { label, values, differs: differ(values) };
  });
  const most = Math.max(0, ...formulas.map(({ steps }) => steps.length));
  const steps = Array.from({ length: most }, (_, at): SharedFact => {
    const values = formulas.map((content) => stepText(content, content.steps[at], region));
    return { label: `Step ${at + 1}`, values, differs: differ(values) };
  });
  return [...told, ...steps].filter(({ values }) => values.some((value) => value !== ''));
}
