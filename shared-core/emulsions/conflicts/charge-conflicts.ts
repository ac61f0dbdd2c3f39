import type { Source } from '../../working/working';
import { chargeBearers, type ChargeBearer, type Dose } from './charge-bearers';

export type ConflictSeverity = 'forms a salt' | 'may lose effect' | 'watch';

/** Two materials of one formula that do not get on, how badly, and what to do. */
export interface ChargeConflict {
  severity: ConflictSeverity;
  first: ChargeBearer;
  second: ChargeBearer;
  why: string;
  advice: string;
  source: Source;
}

const OPPOSITE_CHARGES: Source = {
  text: 'Rosen M.J., Surfactants and Interfacial Phenomena, 3rd ed., Wiley, Hoboken 2004; Sinko P.J. (ed.), Martin’s Physical Pharmacy and Pharmaceutical Sciences, 5th ed., Lippincott, Baltimore 2006',
  basis: 'memory',
};
const CARBOMER: Source = {
  text: 'Rowe R.C., Sheskey P.J., Quinn M.E. (eds), Handbook of Pharmaceutical Excipients, 6th ed., Pharmaceutical Press, London 2009, Carbomer monograph',
  basis: 'memory',
};
const COLLAPSE: Source = {
  text: 'Int. J. Cosmet. Sci. 26(2) (2004), cetyl alcohol/non-ionic creams with polymers, abstract',
  basis: 'read',
};
const AMPHOTERIC: Source = { text: 'common practice, no source', basis: 'common-practice' };

type Verdict = Pick<ChargeConflict, 'severity' | 'why' | 'advice' | 'source'>;

const SEPARATE = 'Keep to one sign of charge, or replace one of them by a non-ionic.';

function surfactantAgainst(anion: ChargeBearer): Verdict {
  const source = anion.kind === 'acrylic polymer' ? CARBOMER : OPPOSITE_CHARGES;
  switch (anion.kind) {
    case 'fatty acid':
      return {
        severity: 'watch',
        why: 'The fatty acid is still a wax here, but any base makes soap of it, and soap and a cationic form an insoluble salt.',
        advice: 'Add no base, or use a non-ionic wax in place of the fatty acid.',
        source,
      };
    case 'gum':
    case 'particle':
    case 'dye':
      return {
        severity: 'may lose effect',
        why: `A cationic binds to an anionic ${anion.kind}, which then flocculates, thins or loses its shade.`,
        advice: `Use a non-ionic ${anion.kind === 'gum' ? 'thickener, such as a cellulose ether' : anion.kind}, or test the pair in water first.`,
        source,
      };
    default:
      return {
        severity: 'forms a salt',
        why: `A cationic and an anionic (${anion.kind}) form an insoluble salt: both lose their effect and the emulsion may break.`,
        advice: SEPARATE,
        source,
      };
  }
}

function polymerAgainst(anion: ChargeBearer): Verdict {
  if (anion.kind === 'fatty acid') return surfactantAgainst(anion);
  return {
    severity: 'may lose effect',
    why: 'A cationic polymer and an anionic join into a complex that may deposit, haze or thin the product; some products are built on it at a chosen ratio.',
    advice: 'Unless the ratio is engineered and tested, keep to one sign of charge.',
    source: OPPOSITE_CHARGES,
  };
}

function metalAgainst(anion: ChargeBearer): Verdict | null {
  if (anion.kind === 'soap') {
    return {
      severity: 'forms a salt',
      why: 'Magnesium, calcium, zinc and aluminium ions turn soap into an insoluble metal soap.',
      advice: 'Replace the soap by a non-ionic, or the metal salt by a sodium one.',
      source: OPPOSITE_CHARGES,
    };
  }
  if (anion.kind === 'acrylic polymer') {
    return {
      severity: 'may lose effect',
      why: 'Multivalent ions bridge the chains of carbomer and its relatives: the gel thins or turns lumpy.',
      advice: 'Thicken with a non-ionic polymer, or leave the metal salt out.',
      source: CARBOMER,
    };
  }
  return null;
}

function judge(cation: ChargeBearer, anion: ChargeBearer): Verdict | null {
  if (cation.kind === 'multivalent salt') return metalAgainst(anion);
  return cation.kind === 'polymer' ? polymerAgainst(anion) : surfactantAgainst(anion);
}

function withAmphoterics(bearers: readonly ChargeBearer[]): ChargeConflict[] {
  const amphoterics = bearers.filter((bearer) => bearer.charge === 'amphoteric');
  const cations = bearers.filter((bearer) => bearer.charge === 'cationic' && bearer.kind === 'surfactant');
  return amphoterics.flatMap((first) =>
    cations.map((second) => ({
      severity: 'watch' as const,
      first,
      second,
      why: 'An amphoteric is anionic at high pH and cationic at low pH; beside a cationic it is safe only on the acid side.',
      advice: 'Keep the pH well below the amphoteric’s isoelectric point, and test it there.',
      source: AMPHOTERIC,
    })),
  );
}

/** @param doses of which the largest non-ionic emulsifier stands for the network, whichever line comes first */
function withGelNetwork(bearers: readonly ChargeBearer[], doses: readonly Dose[]): ChargeConflict[] {
  const polymers = bearers.filter((bearer) => bearer.charge === 'cationic' && bearer.kind === 'polymer');
  const ppmOf = new Map(doses.map(({ lineId, ppm }) => [lineId, ppm]));
  const share = ({ lineId }: ChargeBearer): number => ppmOf.get(lineId) ?? 0;
  const [network] = bearers
    .filter((bearer) => bearer.charge === 'non-ionic' && bearer.isEmulsifier)
    .sort((a, b) => share(b) - share(a) || a.name.localeCompare(b.name, 'en'));
  if (!network) return [];
  return polymers.map((first) => ({
    severity: 'watch' as const,
    first,
    second: network,
    why: 'Cationic polymers (polyquaternium-7 and -11) made the gel network of a cetyl alcohol/non-ionic cream collapse: it thinned, and its drops grew.',
    advice: 'Check viscosity and drop size after a day and a week; use the least that does the job.',
    source: COLLAPSE,
  }));
}

/** What two bearers of opposite charge do to each other; null where they get on. */
export function clash(one: ChargeBearer, other: ChargeBearer): ChargeConflict | null {
  const [first, second] = one.charge === 'cationic' ? [one, other] : [other, one];
  if (first.charge !== 'cationic' || second.charge !== 'anionic') return null;
  const verdict = judge(first, second);
  return verdict ? { first, second, ...verdict } : null;
}

const RANK: Record<ConflictSeverity, number> = { 'forms a salt': 0, 'may lose effect': 1, watch: 2 };

/**
 * The pairs of a formula's materials whose charges do not get on, worst first, then in the order of the lines.
 * Every charge-bearer counts: soap (also that formed by an acid with a base), anionic surfactants, carbomers, gums,
 * dyes, multivalent salts. Each pair stands once.
 *
 * @param doses the formula's lines with their materials, in order
 */
export function chargeConflicts(doses: readonly Dose[]): ChargeConflict[] {
  const bearers = chargeBearers(doses);
  const anions = bearers.filter((bearer) => bearer.charge === 'anionic');
  const cations = bearers.filter((bearer) => bearer.charge === 'cationic');
  const pairs = cations.flatMap((first) =>
    anions.map((second) => clash(first, second)).filter((conflict) => conflict !== null),
  );
  return [...pairs, ...withAmphoterics(bearers), ...withGelNetwork(bearers, doses)].sort(
    (a, b) => RANK[a.severity] - RANK[b.severity],
  );
}
