import { isEmulsifier } from '../emulsions/conflicts/recognise';
import type { FormulaFacts, LineFacts } from './facts';

/** The lines that go with the water: water, what dissolves in it, and what is put into it; emulsifiers and oils left out. */
export function waterPhase({
  used,
  oils,
  watery,
}: Pick<FormulaFacts, 'used' | 'oils' | 'watery'>): LineFacts[] {
  if (watery.length === 0) return [];
  return used.filter((line) => {
    const { material } = line;
    if (watery.includes(line)) return true;
    if (oils.includes(line) || isEmulsifier(material)) return false;
    return material.phaseOfUse === 'water' || material.solubleIn.includes('water');
  });
}
