import type { Candidate, Demand, PairingRule } from './demand';
import type { Row, Term } from './lp-text';
import { dispersesInWater, holdsFilmAlone, isCationicPartner, isLow, servesType } from '../systems/character';

/** Which of the pairing rules' groups a candidate belongs to. */
export interface Groups {
  anionic: boolean;
  cationic: boolean;
  nonIonic: boolean;
  partner: boolean;
  serves: boolean;
  waxy: boolean;
  liquid: boolean;
  /** Disperses in water, or may. */
  disperses: boolean;
}

/** The groups of one candidate for a type of emulsion; what is not recorded belongs to none, save the type served. */
export function groupsOf(one: Candidate, type: Demand['emulsionType']): Groups {
  const low = isLow(one);
  // One that holds the film of a w/o emulsion alone stands for both partners.
  const alone = holdsFilmAlone(one);
  return {
    anionic: one.charge === 'anionic',
    cationic: one.charge === 'cationic',
    nonIonic: one.charge === 'non-ionic',
    partner: isCationicPartner(one),
    serves: servesType(one.emulsionType, type),
    waxy: alone || (one.character === 'waxy' && low),
    liquid: alone || (one.character === 'liquid' && low),
    disperses: dispersesInWater(one) !== false,
  };
}

/** A candidate as a variable of the model: y_n says whether it is used. */
export interface Used {
  groups: Groups;
  y: string;
}

function atLeastOne(rule: PairingRule, used: readonly Used[], group: keyof Groups): Row {
  const terms: Term[] = used.filter((one) => one.groups[group]).map((one) => [1, one.y]);
  return { demand: rule, terms, sense: '>=', rhs: 1 };
}

/** Every `needy` one used asks for at least one of `helpers`. */
function impliesOne(
  rule: PairingRule,
  used: readonly Used[],
  needy: keyof Groups,
  helpers: keyof Groups,
): Row[] {
  const help: Term[] = used.filter((one) => one.groups[helpers]).map((one) => [-1, one.y]);
  return used
    .filter((one) => one.groups[needy])
    .map((one) => ({ demand: rule, terms: [[1, one.y] as const, ...help], sense: '<=', rhs: 0 }));
}

/** The sign of charge of the whole system: 1 lets cationics in, 0 anionics. */
export const SIGN = 'sign';

function oneSign(used: readonly Used[]): Row[] {
  const rule = 'one sign of charge';
  return used.flatMap((one): Row[] => {
    if (one.groups.cationic)
      return [
        {
          demand: rule,
          terms: [
            [1, one.y],
            [-1, SIGN],
          ],
          sense: '<=',
          rhs: 0,
        },
      ];
    if (one.groups.anionic)
      return [
        {
          demand: rule,
          terms: [
            [1, one.y],
            [1, SIGN],
          ],
          sense: '<=',
          rhs: 1,
        },
      ];
    return [];
  });
}

/** A pairing rule as rows over the candidates' use. */
export function pairingRows(rule: PairingRule, used: readonly Used[]): Row[] {
  switch (rule) {
    case 'one sign of charge':
      return oneSign(used);
    case 'serves the type':
      return [atLeastOne(rule, used, 'serves')];
    case 'waxy with liquid':
      return [atLeastOne(rule, used, 'waxy'), atLeastOne(rule, used, 'liquid')];
    case 'cationic with a non-ionic':
      return impliesOne(rule, used, 'cationic', 'partner');
    case 'a cationic':
      return [atLeastOne(rule, used, 'cationic')];
    case 'ionic with a non-ionic':
      return ionicWithNonIonic(used);
    case 'one that disperses in water':
      return [atLeastOne(rule, used, 'disperses')];
  }
}

function ionicWithNonIonic(used: readonly Used[]): Row[] {
  const rule = 'ionic with a non-ionic';
  const ionic: Term[] = used
    .filter((one) => one.groups.anionic || one.groups.cationic)
    .map((one) => [1, one.y]);
  return [{ demand: rule, terms: ionic, sense: '>=', rhs: 1 }, atLeastOne(rule, used, 'nonIonic')];
}

/** Whether a set of chosen candidates keeps a rule: the same rule in plain words, to verify an answer by. */
export function keepsRule(rule: PairingRule, chosen: readonly Groups[]): boolean {
  const has = (group: keyof Groups): boolean => chosen.some((one) => one[group]);
  switch (rule) {
    case 'one sign of charge':
      return !(has('anionic') && has('cationic'));
    case 'serves the type':
      return has('serves');
    case 'waxy with liquid':
      return has('waxy') && has('liquid');
    case 'cationic with a non-ionic':
      return !has('cationic') || has('partner');
    case 'a cationic':
      return has('cationic');
    case 'ionic with a non-ionic':
      return (has('anionic') || has('cationic')) && has('nonIonic');
    case 'one that disperses in water':
      return has('disperses');
  }
}
