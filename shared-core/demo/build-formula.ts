import { blankProductFile } from '../formulas/product-file';
import {
  blankTarget,
  type Formula,
  type FormulaContent,
  type FormulaLine,
  type FormulaPhase,
  type ProcedureStep,
  type TargetSpecification,
} from '../formulas/formula';
import { blankMarket, type Market } from '../products/market';
import { ppmFromPercent, WHOLE_PPM } from '../quantities/share';
import { NEVER_MADE } from './never-made';
import type { MakeId } from './demo-id';

/** A line: the material's code, its per cent of the formula or 'q.s.', and a note. */
type DemoLine = [string, number | 'q.s.', string?];

interface DemoPhase {
  title: string;
  /** °C, or null for an unheated phase. */
  at: number | null;
  lines: DemoLine[];
}

interface DemoStep {
  /** The letters of the phases it handles, such as 'AB'. */
  phases: string;
  instruction: string;
  at?: number;
  rpm?: number;
  minutes?: number;
  lookFor?: string;
  caution?: string;
}

/** A demonstration formula as it is written down: codes and per cent, not identifiers and ppm. */
export interface DemoFormula extends Pick<
  FormulaContent,
  'code' | 'name' | 'productType' | 'use' | 'purpose' | 'notes'
> {
  phases: DemoPhase[];
  steps: DemoStep[];
  target: Partial<TargetSpecification>;
  /** What it becomes, as far as it is said. */
  market?: Partial<Market>;
}

const CAVEAT = `Invented for demonstration, ${NEVER_MADE}. It is not proof of safety or preservation: a qualified safety assessment, a stability study, a challenge test and local law decide.`;

function fixedPpm(entry: DemoFormula): number {
  const amounts = entry.phases.flatMap((phase) => phase.lines).map(([, amount]) => amount);
  return amounts.reduce<number>((sum, amount) => sum + (amount === 'q.s.' ? 0 : ppmFromPercent(amount)), 0);
}

/**
 * Turns a written formula into a whole draft.
 *
 * @param materialId the identifier of the material with a code; throws for a code that is not on the shelf
 */
export function buildFormula(
  entry: DemoFormula,
  materialId: (code: string) => string,
  makeId: MakeId,
  at: string,
): Formula {
  const { phases: written, steps, target, notes, market, ...named } = entry;
  const key = (part: string) => makeId(`formula:${entry.code}:${part}`);
  const left = WHOLE_PPM - fixedPpm(entry);

  const line = ([code, amount, note]: DemoLine, place: string): FormulaLine => ({
    id: key(`line:${place}`),
    materialId: materialId(code),
    ppm: amount === 'q.s.' ? left : ppmFromPercent(amount),
    toHundred: amount === 'q.s.',
    note: note ?? '',
  });
  const phases: FormulaPhase[] = written.map((phase, index) => ({
    id: key(`phase:${index}`),
    title: phase.title,
    temperatureC: phase.at,
    lines: phase.lines.map((each, number) => line(each, `${index}:${number}`)),
  }));
  const step = (each: DemoStep, index: number): ProcedureStep => ({
    id: key(`step:${index}`),
    phaseIds: [...each.phases].map((letter) => phases[letter.charCodeAt(0) - 65]?.id ?? ''),
    instruction: each.instruction,
    temperatureC: each.at ?? null,
    speedRpm: each.rpm ?? null,
    minutes: each.minutes ?? null,
    lookFor: each.lookFor ?? '',
    caution: each.caution ?? '',
  });
  return {
    ...named,
    market: { ...blankMarket(), ...market },
    phases,
    steps: steps.map(step),
    target: { ...blankTarget(), ...target },
    accepted: [],
    ...blankProductFile(),
    notes: `${notes}\n\n${CAVEAT}`,
    id: key('itself'),
    archived: false,
    revision: 1,
    createdAt: at,
    updatedAt: at,
  };
}
