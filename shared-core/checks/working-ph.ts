import { outsideWorkingPh, soapAtPh, type PhRange } from '../emulsions/working-ph';
import type { CheckRule, Finding } from './check';
import type { FormulaFacts, LineFacts } from './facts';
import { phAdvice, soapLines } from './ph-room';

const INSTEAD = 'choose a material that works at this pH';

function outside(line: LineFacts, ph: PhRange, facts: FormulaFacts): Finding[] {
  const { material, lineId } = line;
  const window = material.figures.workingPh;
  if (!window || !outsideWorkingPh(material, ph)) return [];
  return [
    {
      ruleId: 'working-ph',
      severity: 'warn',
      title: `${material.tradeName} works at pH ${window.low ?? '…'} to ${window.high ?? '…'}, the target is pH ${ph.low} to ${ph.high}`,
      lines: [lineId],
      advice: `${phAdvice(facts, { low: window.low, high: window.high, of: material.tradeName }, INSTEAD)} Outside its range it thins, breaks down or loses its effect.`,
      source: { text: window.source || `working pH, ${window.provenance}`, basis: 'library' },
    },
  ];
}

/** Soap that the target turns back into acid. */
function soaps(facts: FormulaFacts): Finding[] {
  const { ph } = facts;
  const lines = soapLines(facts);
  if (!ph || lines.length === 0 || !soapAtPh(ph)?.fails) return [];
  return [
    {
      ruleId: 'working-ph',
      severity: 'warn',
      title: `Soap turns back into fatty acid below pH 7; the target begins at ${ph.low}`,
      lines: lines.map((line) => line.lineId),
      advice: 'Keep a soap emulsion at pH 7.5 to 8.5, or use an emulsifier that tolerates acid.',
      source: {
        text: 'Aulton M.E. (ed.), Pharmaceutics: The Science of Dosage Form Design, 2nd ed., Churchill Livingstone, Edinburgh 2002',
        basis: 'memory',
      },
    },
  ];
}

/** Every line works over the whole of the target pH range; preservatives have a check of their own. */
export const workingPh: CheckRule = {
  id: 'working-ph',
  name: 'Every material works at the target pH',
  tells: 'a material does not work at the target pH',
  judge(facts) {
    const { used, ph } = facts;
    if (!ph) return [];
    const others = used.filter((line) => !line.material.functions.includes('preservative'));
    const found = others.flatMap((line) => outside(line, ph, facts));
    const told = new Set(found.flatMap((finding) => finding.lines));
    return [...found, ...soaps(facts).filter((finding) => finding.lines.some((id) => !told.has(id)))];
  },
};
