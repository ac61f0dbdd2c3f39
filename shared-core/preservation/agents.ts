import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';
import { endsOf, namesWithin, plainName } from '../substances/names';
import type { Source } from '../working/working';

/** How strongly a preservative acts against a kind of microbe: not at all, weakly, strongly. */
export type Activity = 0 | 1 | 2;
export const MICROBES = ['Gram-positive bacteria', 'Gram-negative bacteria', 'yeasts', 'moulds'] as const;
export type Microbe = (typeof MICROBES)[number];

/** What is known of a preservative: against what, as which acid, and how it divides between oil, micelles and water. */
export interface Agent {
  name: string;
  inci: RegExp;
  /** In the order of `MICROBES`. */
  acts: readonly [Activity, Activity, Activity, Activity];
  /** The acid that acts, where it is one: its pKa and molar mass, and the salts' molar masses by INCI name. */
  acid?: { pKa: number; molarMass: number; salts: Readonly<Record<string, number>> };
  /** The least that acts, free and undissociated in the water phase, %; null where it is not known. */
  leastPercent: number | null;
  /** Partition coefficient, mineral oil and vegetable oil to water. */
  oil?: { mineral: number; vegetable: number };
  /** Octanol and water, log P: binding by ethoxylates goes with it. */
  logP?: number;
}

/** What the table below goes by. Only extracts of the papers were seen, and most marks are not in them. */
export const AGENTS_SOURCE: Source = {
  text: 'a table of common preservatives: activity after Steinberg D.C., J. Cosmet. Sci. 56, 361–362 (2005); least doses after J. Soc. Cosmet. Chem. 18, 211–212 (1967) and 26, 105–117 (1975)',
  basis: 'memory',
};

const BENZOIC = {
  pKa: 4.19,
  molarMass: 122.12,
  salts: { 'sodium benzoate': 144.1, 'potassium benzoate': 160.21 },
};
const SORBIC = {
  pKa: 4.76,
  molarMass: 112.13,
  salts: { 'potassium sorbate': 150.22, 'sodium sorbate': 134.11 },
};
const DEHYDROACETIC = { pKa: 5.27, molarMass: 168.15, salts: { 'sodium dehydroacetate': 190.13 } };
const SALICYLIC = { pKa: 2.97, molarMass: 138.12, salts: { 'sodium salicylate': 160.1 } };
const ANISIC = { pKa: 4.47, molarMass: 152.15, salts: { 'sodium anisate': 174.13 } };
const LEVULINIC = { pKa: 4.64, molarMass: 116.12, salts: { 'sodium levulinate': 138.1 } };

/** Oil partition of parabens: J. Soc. Cosmet. Chem. 23, 715 (1972), Table VII; of the others: Handbook of Pharmaceutical Excipients, from memory. */
export const AGENTS: readonly Agent[] = [
  {
    name: 'methylparaben',
    inci: /^(sodium )?methylparaben$/,
    acts: [2, 0, 1, 1],
    leastPercent: 0.1,
    oil: { mineral: 0.02, vegetable: 7.5 },
    logP: 1.96,
  },
  {
    name: 'ethylparaben',
    inci: /^(sodium )?ethylparaben$/,
    acts: [2, 0, 1, 1],
    leastPercent: 0.07,
    oil: { mineral: 0.1, vegetable: 25 },
    logP: 2.47,
  },
  {
    name: 'propylparaben',
    inci: /^(sodium )?propylparaben$/,
    acts: [2, 0, 1, 2],
    leastPercent: 0.03,
    oil: { mineral: 0.5, vegetable: 80 },
    logP: 3.04,
  },
  {
    name: 'butylparaben',
    inci: /^(sodium )?butylparaben$/,
    acts: [2, 0, 1, 2],
    leastPercent: 0.02,
    oil: { mineral: 3, vegetable: 280 },
    logP: 3.57,
  },
  {
    name: 'benzoic acid',
    inci: /^(benzoic acid|(sodium|potassium) benzoate)$/,
    acts: [2, 1, 1, 0],
    acid: BENZOIC,
    leastPercent: 0.02,
    oil: { mineral: 0.2, vegetable: 4.5 },
    logP: 1.87,
  },
  {
    name: 'sorbic acid',
    inci: /^(sorbic acid|(sodium|potassium) sorbate)$/,
    acts: [1, 1, 2, 1],
    acid: SORBIC,
    leastPercent: 0.03,
    oil: { mineral: 0.2, vegetable: 3.5 },
    logP: 1.33,
  },
  {
    name: 'dehydroacetic acid',
    inci: /^(dehydroacetic acid|sodium dehydroacetate)$/,
    acts: [1, 0, 2, 2],
    acid: DEHYDROACETIC,
    leastPercent: 0.05,
  },
  {
    name: 'salicylic acid',
    inci: /^(salicylic acid|sodium salicylate)$/,
    acts: [1, 1, 2, 2],
    acid: SALICYLIC,
    leastPercent: 0.02,
  },
  {
    name: 'p-anisic acid',
    inci: /^(p-anisic acid|sodium anisate)$/,
    acts: [1, 0, 2, 2],
    acid: ANISIC,
    leastPercent: 0.02,
  },
  {
    name: 'levulinic acid',
    inci: /^(levulinic acid|sodium levulinate)$/,
    acts: [1, 1, 0, 0],
    acid: LEVULINIC,
    leastPercent: 0.02,
  },
  {
    name: 'phenoxyethanol',
    inci: /^phenoxyethanol$/,
    acts: [1, 2, 1, 1],
    leastPercent: 0.33,
    oil: { mineral: 0.3, vegetable: 2.6 },
    logP: 1.16,
  },
  {
    name: 'benzyl alcohol',
    inci: /^benzyl alcohol$/,
    acts: [2, 1, 1, 1],
    leastPercent: 0.25,
    oil: { mineral: 0.2, vegetable: 1.3 },
    logP: 1.1,
  },
  { name: 'phenethyl alcohol', inci: /^phenethyl alcohol$/, acts: [1, 2, 0, 0], leastPercent: 0.3 },
  { name: 'chlorphenesin', inci: /^chlorphenesin$/, acts: [1, 1, 2, 2], leastPercent: 0.1 },
  { name: 'an isothiazolinone', inci: /isothiazolinone$/, acts: [2, 2, 2, 2], leastPercent: 0.0005 },
  { name: 'bronopol', inci: /^2-bromo-2-nitropropane/, acts: [2, 2, 1, 1], leastPercent: 0.01 },
  {
    name: 'iodopropynyl butylcarbamate',
    inci: /^iodopropynyl butylcarbamate$/,
    acts: [0, 0, 2, 2],
    leastPercent: 0.005,
  },
  {
    name: 'a formaldehyde releaser',
    inci: /^(dmdm hydantoin|(imid|diazolid)azolidinyl urea|imidazolidinyl urea|diazolidinyl urea|quaternium-15|sodium hydroxymethylglycinate)$/,
    acts: [2, 2, 1, 1],
    leastPercent: 0.1,
  },
  { name: 'chlorhexidine', inci: /^chlorhexidine/, acts: [2, 2, 1, 0], leastPercent: 0.05 },
  { name: 'hexamidine', inci: /^hexamidine/, acts: [2, 2, 1, 1], leastPercent: 0.05 },
  {
    name: 'polyaminopropyl biguanide',
    inci: /^polyaminopropyl biguanide/,
    acts: [2, 2, 1, 0],
    leastPercent: 0.05,
  },
  { name: 'ethyl lauroyl arginate', inci: /^ethyl lauroyl arginate/, acts: [2, 2, 2, 1], leastPercent: 0.1 },
  {
    name: 'a quaternary ammonium compound',
    inci: /^(benzalkonium|benzethonium|methylbenzethonium|cetylpyridinium)/,
    acts: [2, 1, 1, 0],
    leastPercent: 0.01,
  },
  { name: 'o-cymen-5-ol', inci: /^o-cymen-5-ol$/, acts: [2, 1, 2, 2], leastPercent: 0.05 },
  { name: 'zinc pyrithione', inci: /^zinc pyrithione$/, acts: [2, 2, 2, 2], leastPercent: 0.05 },
  { name: 'piroctone olamine', inci: /^piroctone olamine$/, acts: [1, 1, 2, 2], leastPercent: 0.05 },
  { name: 'climbazole', inci: /^climbazole$/, acts: [0, 0, 2, 2], leastPercent: 0.1 },
  { name: 'triclosan', inci: /^triclosan$/, acts: [2, 1, 1, 0], leastPercent: 0.1 },
];

/** What helps a preservative against all of them: medium-chain diols and glycerol ethers, by INCI name. Common practice, no source. */
export const BOOSTER =
  /^(caprylyl glycol|ethylhexylglycerin|glyceryl caprylate|1,2-hexanediol|decylene glycol|hydroxyacetophenone|caprylhydroxamic acid)$/;

const FOUND = new Map<string, Agent | null>();

/** The agent that an INCI name means; null for one that the table does not know. Looked up once a name. */
export function agentOf(inci: string): Agent | null {
  const known = FOUND.get(inci);
  if (known !== undefined) return known;
  const name = plainName(inci);
  const found = AGENTS.find((one) => one.inci.test(name)) ?? null;
  FOUND.set(inci, found);
  return found;
}

/** How much of an acid a salt holds, by mass; 1 for the acid and for what is none. */
export function acidShare({ acid }: Agent, inci: string): number {
  const salt = acid?.salts[plainName(inci)];
  return acid && salt ? acid.molarMass / salt : 1;
}

/** What lines bring of one agent. */
export interface AgentDose {
  agent: Agent;
  /** As the acid where it is one, ppm of the formula, at the lower end of suppliers' ranges. */
  ppm: number;
  /** What there may be besides, ppm: of names that a supplier wrote into one, nobody says how much each is. */
  unsaidPpm: number;
  lineIds: string[];
}

/** The agents that a name of a composition means: several where a supplier wrote several names into one. */
export function agentsWithin(inci: string): ReadonlySet<Agent> {
  return new Set(namesWithin(inci).flatMap((name) => agentOf(name) ?? []));
}

/** Sums the agents of preservative lines; an acid that is there as an active or for the pH counts as well. */
export function agentDoses(
  lines: readonly { lineId: string; material: Pick<Material, 'composition'>; ppm: number }[],
): AgentDose[] {
  const found = new Map<Agent, AgentDose>();
  for (const { lineId, material, ppm } of lines)
    for (const part of material.composition) {
      const names = namesWithin(part.inci);
      for (const agent of agentsWithin(part.inci)) {
        const dose = found.get(agent) ?? { agent, ppm: 0, unsaidPpm: 0, lineIds: [] };
        const { least, most } = endsOf(part, (name) => agentOf(name) === agent);
        // Of an acid and its salt, written into one, the salt holds less of what acts.
        const acid = Math.min(
          ...names.filter((name) => agentOf(name) === agent).map((name) => acidShare(agent, name)),
        );
        dose.ppm += ((ppm * least) / WHOLE_PPM) * acid;
        if (names.length > 1) dose.unsaidPpm += ((ppm * (most - least)) / WHOLE_PPM) * acid;
        if (!dose.lineIds.includes(lineId)) dose.lineIds.push(lineId);
        found.set(agent, dose);
      }
    }
  return [...found.values()].filter(({ ppm, unsaidPpm }) => ppm > 0 || unsaidPpm > 0);
}

/** The share of an acid that is undissociated at a pH; 1 for what is no acid, or where no pH is said. */
export function undissociatedShare({ acid }: Agent, ph: number | null): number {
  return acid && ph !== null ? 1 / (1 + 10 ** (ph - acid.pKa)) : 1;
}
