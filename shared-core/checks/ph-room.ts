import { isBase, isFattyAcid, isSoap } from '../emulsions/conflicts/recognise';
import { SOAP_FAILS } from '../emulsions/working-ph';
import { joined } from '../locale/words';
import type { Figure } from '../materials/figure';
import type { FormulaFacts, LineFacts } from './facts';

/** A pH that something asks for; null for an end that it leaves open. */
export interface PhWindow {
  low: number | null;
  high: number | null;
  /** Who asks: a material, or what a limit is about. */
  of: string;
}

/** Below this share of undissociated acid an organic-acid preservative is called out. Common practice, no source. */
export const LOWEST_ACTIVE_FRACTION = 0.1;

/** The pKa to go by: the stated one, else the lower end of a range, which leaves the least of the acid active. */
export function cautiousPka(figure: Figure | undefined): { pKa: number; range: boolean } | null {
  if (!figure) return null;
  const pKa = figure.value ?? figure.low ?? figure.high;
  return pKa === null ? null : { pKa, range: figure.value === null };
}

/** Up to which pH enough of an organic acid is left undissociated. */
export function activeUpTo(pKa: number): number {
  return pKa + Math.log10(1 / LOWEST_ACTIVE_FRACTION - 1);
}

/** Soap that a low pH turns back into acid: ready-made, or made in the pot. */
export function soapLines({ emulsifiers, used }: FormulaFacts): LineFacts[] {
  const hasBase = used.some((line) => isBase(line.material));
  return emulsifiers.filter(
    ({ material }) => isSoap(material) || (hasBase && isFattyAcid(material) && !isBase(material)),
  );
}

function windowsOfLine({ material }: LineFacts): PhWindow[] {
  const { workingPh, pKa } = material.figures;
  const acid = material.functions.includes('preservative') ? cautiousPka(pKa) : null;
  const own = { of: material.tradeName };
  return [
    ...(workingPh ? [{ low: workingPh.low, high: workingPh.high, ...own }] : []),
    ...(acid ? [{ low: null, high: activeUpTo(acid.pKa), ...own }] : []),
  ];
}

function windowsOf(facts: FormulaFacts): PhWindow[] {
  return [
    ...facts.used.flatMap(windowsOfLine),
    ...soapLines(facts).map(({ material }) => ({ low: SOAP_FAILS, high: null, of: material.tradeName })),
    ...(facts.lawOf?.judged ?? [])
      .filter(({ ph, time }) => ph !== null && time === 'in force')
      .map(({ limit: { phLow, phHigh, subject } }) => ({ low: phLow, high: phHigh, of: subject })),
  ];
}

const NO_END = { low: -Infinity, high: Infinity };
const meets = (a: PhWindow, b: PhWindow): boolean =>
  Math.max(a.low ?? NO_END.low, b.low ?? NO_END.low) <=
  Math.min(a.high ?? NO_END.high, b.high ?? NO_END.high);

/** Rounded inwards, to the first decimal where that leaves room. */
function words(low: number, high: number): string {
  const [from, to] = [Math.ceil(low * 10 - 1e-9) / 10, Math.floor(high * 10 + 1e-9) / 10];
  const [a, b] = from <= to ? [from, to] : [low, high];
  const shown = (value: number): string => String(Number(value.toFixed(2)));
  if (!Number.isFinite(a)) return `at pH ${shown(b)} or below`;
  if (!Number.isFinite(b)) return `at pH ${shown(a)} or above`;
  return a === b ? `at pH ${shown(a)}` : `within pH ${shown(a)} to ${shown(b)}`;
}

/**
 * What to do about a pH that something asks for, without asking for what another line cannot bear: the target that
 * every line works at, or whom none suits.
 *
 * @param instead what may be done in the place of it: "choose a preservative for this pH"
 */
export function phAdvice(facts: FormulaFacts, asked: PhWindow, instead: string): string {
  const windows = [asked, ...windowsOf(facts)];
  const against = windows.filter((other) => !meets(asked, other));
  const low = Math.max(...windows.map((one) => one.low ?? NO_END.low));
  const high = Math.min(...windows.map((one) => one.high ?? NO_END.high));
  if (low <= high)
    return `Set the target ${words(low, high)}, which suits every line that says its own, or ${instead}.`;
  const names = new Set(
    (against.length > 0 ? against : windows.filter((one) => one.low === low || one.high === high))
      .map(({ of }) => of)
      .filter((name) => name !== asked.of),
  );
  return `No pH suits it and ${joined([...names])}: replace one of them, or ${instead}.`;
}
