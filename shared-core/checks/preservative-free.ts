import { holdsOxyethylene } from '../emulsions/conflicts/recognise';
import { hlbOf } from '../emulsions/systems/character';
import { agentDoses, undissociatedShare, type AgentDose } from '../preservation/agents';
import { bindingByEthoxylates, freeInWater, FREE_IN_WATER } from '../preservation/free-in-water';
import { joined } from '../locale/words';
import type { Worked } from '../working/working';
import { NOT_PROOF, type CheckRule, type Finding } from './check';
import { named } from '../emulsions/conflicts/recognise';
import { waterPhase } from './water-phase';
import { percentText, sumPpm, type FormulaFacts, type LineFacts } from './facts';

/** Oils that dissolve little of a preservative: hydrocarbons and silicones. All others count as vegetable oil does. */
const INERT =
  /^paraffinum|^petrolatum|^mineral oil|^squalane|^iso(hexa|do)?decane|^isohexadecane|^cera microcristallina|^ozokerite|^ceresin|^hydrogenated polyisobutene|^c\d+-\d+ (iso)?(alkane|paraffin)|(methicone|siloxane)$|^undecane|^tridecane/;
/** Below this HLB an ethoxylate goes into the oil rather than into micelles. */
const MICELLES_FROM = 9;

/** What is left free, against the least that acts: a warning below half, a note below the whole. Common practice. */
const WARN_BELOW = 0.5;

function bindsPreservative({ material }: LineFacts): boolean {
  return holdsOxyethylene(material) && (hlbOf(material) ?? MICELLES_FROM) >= MICELLES_FROM;
}

interface Free {
  dose: AgentDose;
  worked: Worked;
  /** Of the least that acts. */
  ofLeast: number;
}

function freeOf(dose: AgentDose, facts: FormulaFacts): Free | null {
  const { agent } = dose;
  if (!agent.oil || agent.logP === undefined || agent.leastPercent === null) return null;
  const water = sumPpm(waterPhase(facts));
  const oil = sumPpm(facts.oils);
  const inert = sumPpm(facts.oils.filter(({ material }) => named(material, INERT)));
  const mineral = oil === 0 ? 0 : inert / oil;
  const undissociated = undissociatedShare(agent, facts.ph?.high ?? null);
  const worked = freeInWater({
    total: dose.ppm / 10_000,
    oilToWater: oil / water,
    partition: mineral * agent.oil.mineral + (1 - mineral) * agent.oil.vegetable,
    binding: bindingByEthoxylates(agent.logP),
    ethoxylates: (100 * sumPpm(facts.used.filter(bindsPreservative))) / water,
    undissociated,
  });
  return { dose, worked, ofLeast: worked.value / agent.leastPercent };
}

const words = ({ dose, worked }: Free): string =>
  `${percentText(Math.round(worked.value * 10_000))} of ${dose.agent.name} of ${percentText(Math.round(dose.ppm))} in the formula`;

/** Oil takes a preservative up, and ethoxylates bind it: what is left free in the water phase is what preserves. */
export const preservativeFree: CheckRule = {
  id: 'preservative-free',
  name: 'Enough preservative is left free in the water',
  tells: 'oil and ethoxylates leave too little of a preservative free in the water',
  judge(facts) {
    const preservatives = facts.used.filter(({ material }) => material.functions.includes('preservative'));
    const doses = agentDoses(preservatives);
    if (doses.length === 0 || sumPpm(waterPhase(facts)) === 0) return [];
    const binds = facts.used.some(bindsPreservative);
    if (!binds && facts.oils.length === 0) return [];
    const known = doses.flatMap((dose) => freeOf(dose, facts) ?? []);
    // Another preservative whose division or share is not known may do the work.
    if (known.length < doses.length || known.length === 0) return [];
    if (doses.some(({ unsaidPpm }) => unsaidPpm > 0)) return [];
    const together = known.reduce((sum, one) => sum + one.ofLeast, 0);
    if (together >= 1) return [];
    const severity: Finding['severity'] = together < WARN_BELOW ? 'warn' : 'note';
    const reasons = [
      ...(facts.oils.length > 0 ? ['oil takes it up'] : []),
      ...(binds ? ['ethoxylates bind it'] : []),
      ...(facts.ph && known.some(({ dose }) => dose.agent.acid)
        ? [`at pH ${facts.ph.high} only a part is undissociated, and acts`]
        : []),
    ];
    const [first] = [...known].sort((a, b) => a.ofLeast - b.ofLeast);
    return [
      {
        ruleId: 'preservative-free',
        severity,
        title: `Left free in the water: ${known.map(words).join('; ')}`,
        lines: [...new Set(doses.flatMap(({ lineIds }) => lineIds))],
        advice: `This is ${Math.round(100 * together)} % of the least that acts: ${joined(reasons)}. Add a preservative that stays in the water, or change what takes it up. ${NOT_PROOF}`,
        source: FREE_IN_WATER,
        ...(first ? { working: first.worked } : {}),
      },
    ];
  },
};
