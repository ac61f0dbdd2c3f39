import { isChelator } from '../emulsions/conflicts/recognise';
import { joined } from '../locale/words';
import {
  agentDoses,
  agentsWithin,
  AGENTS_SOURCE,
  BOOSTER,
  MICROBES,
  undissociatedShare,
  type AgentDose,
  type Microbe,
} from '../preservation/agents';
import { WHOLE_PPM } from '../quantities/share';
import { endsOf, namesWithin, plainName } from '../substances/names';
import { NOT_PROOF, type CheckRule, type Finding } from './check';
import { namesOf, percentText, type FormulaFacts, type LineFacts } from './facts';
import { selfPreserving } from './self-preserving';

/** Boosters from here on lift a weak preservative, ppm of the formula. Common practice, no source. */
const BOOSTING_PPM = 1_000;

/** Of names that a supplier wrote into one: each counted as none of it, or as all of it. */
type End = 'least' | 'most';

/** How far a preservative is at the dose that acts: undissociated, % against the least. */
function ofLeast({ agent, ppm, unsaidPpm }: AgentDose, ph: number | null, end: End): number {
  if (agent.leastPercent === null) return 1;
  const dose = end === 'most' ? ppm + unsaidPpm : ppm;
  return ((dose / 10_000) * undissociatedShare(agent, ph)) / agent.leastPercent;
}

/** What helps a preservative, whichever it is. */
interface Help {
  boosted: boolean;
  chelated: boolean;
}

const isBooster = (inci: string): boolean => BOOSTER.test(plainName(inci));

function helpIn({ used }: FormulaFacts, end: End): Help {
  const boosters = used.reduce((total, { material, ppm }) => {
    const share = material.composition.reduce((a, part) => {
      const { least, most } = endsOf(part, isBooster);
      return a + (end === 'most' && namesWithin(part.inci).length > 1 ? most : least);
    }, 0);
    return total + (ppm * share) / WHOLE_PPM;
  }, 0);
  return { boosted: boosters >= BOOSTING_PPM, chelated: used.some(({ material }) => isChelator(material)) };
}

/** The strength against one kind of microbe: strong by itself, or weak ones and what helps them. */
function cover(microbe: Microbe, doses: readonly AgentDose[], help: Help): number {
  const at = MICROBES.indexOf(microbe);
  const strengths = doses.map(({ agent }) => agent.acts[at] ?? 0);
  const sum = strengths.reduce<number>((a, b) => a + b, 0);
  if (sum === 0) return 0;
  // A chelator opens the outer membrane of Gram-negative bacteria.
  const chelated = help.chelated && microbe === 'Gram-negative bacteria';
  return sum + (help.boosted ? 1 : 0) + (chelated ? 1 : 0);
}

/** Where all hangs on how much each of several names, written into one, is. */
function unsaid(microbes: readonly Microbe[], preservatives: readonly LineFacts[]): Finding {
  const joinedNames = preservatives.filter(({ material }) =>
    material.composition.some(({ inci }) => namesWithin(inci).length > 1),
  );
  return {
    ruleId: 'preservative-spectrum',
    severity: 'note',
    title: `Not known whether enough acts against ${joined([...microbes])}: ${namesOf(joinedNames)} names several substances in one, without the share of each`,
    lines: joinedNames.map((line) => line.lineId),
    advice: `Ask the supplier for the share of each, and enter them one by one in the material’s composition. ${NOT_PROOF}`,
    source: AGENTS_SOURCE,
  };
}

/** Bacteria, yeasts and moulds each need something against them, at a dose that acts. */
export const preservativeSpectrum: CheckRule = {
  id: 'preservative-spectrum',
  name: 'Something acts against bacteria, yeasts and moulds',
  tells: 'nothing at a working dose acts against bacteria, yeasts or moulds',
  judge(facts) {
    if (facts.watery.length === 0 || selfPreserving(facts.used) !== null) return [];
    const preservatives = facts.used.filter(({ material }) => material.functions.includes('preservative'));
    if (preservatives.length === 0) return [];
    const unknown = preservatives.filter(
      ({ material }) => !material.composition.some(({ inci }) => agentsWithin(inci).size > 0),
    );
    if (unknown.length > 0) return [];
    const ph = facts.ph?.high ?? null;
    const doses = agentDoses(facts.used);
    const strengthAt = (end: End): ((microbe: Microbe) => number) => {
      const working = doses.filter((dose) => ofLeast(dose, ph, end) >= 1);
      const help = helpIn(facts, end);
      return (microbe) => cover(microbe, working, help);
    };
    const [surely, atMost] = [strengthAt('least'), strengthAt('most')];
    const weak = doses.filter((dose) => ofLeast(dose, ph, 'most') < 1);
    const bare = MICROBES.filter((one) => atMost(one) === 0);
    const thin = MICROBES.filter((one) => atMost(one) === 1 && surely(one) === 1);
    const untold = MICROBES.filter((one) => surely(one) === 0 && atMost(one) > 0);
    if (bare.length === 0 && untold.length > 0) return [unsaid(untold, preservatives)];
    if (bare.length === 0 && thin.length === 0) return [];
    const doseWords = weak.map(({ agent, ppm }) =>
      `${agent.name}: ${percentText(Math.round(ppm * undissociatedShare(agent, ph)))} ${agent.acid && ph !== null ? `undissociated at pH ${ph}` : ''} of ${agent.leastPercent} % that act`.replace(
        '  ',
        ' ',
      ),
    );
    const said = bare.length > 0 ? bare : thin;
    return [
      {
        ruleId: 'preservative-spectrum',
        severity: bare.length > 0 ? 'warn' : 'note',
        title:
          bare.length > 0
            ? `Nothing at a working dose acts against ${joined(said)}: ${namesOf(preservatives)}`
            : `Only weakly covered: ${joined(said)}, by ${namesOf(preservatives)}`,
        lines: preservatives.map((line) => line.lineId),
        advice: `${doseWords.length > 0 ? `Too little: ${doseWords.join('; ')}. ` : ''}Add a preservative that acts against ${joined([...said])}, or a booster beside it. ${NOT_PROOF}`,
        source: AGENTS_SOURCE,
      },
    ];
  },
};
