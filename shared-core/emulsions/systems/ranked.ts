import type { Worked } from '../../working/working';
import type { HlbBand } from '../hlb-band';
import type { Reason } from './judge-system';
import { demandBand } from './oil-phase';
import { bodyExpected, membersOf, systemCost, type EmulsifierSystem } from './system';
import { systemWorking } from './system-working';
import type { Wish } from './wish';

export interface RankedLine {
  materialId: string;
  name: string;
  role: 'emulsifier' | 'co-emulsifier';
  /** % of the formula. */
  percent: number;
  /** % of the system. */
  ratioPercent: number;
}

export interface RankedSystem {
  lines: RankedLine[];
  levelPercent: number;
  offered: HlbBand | null;
  /** What the oils ask for, a fatty alcohol of this system included; null when none has a value. */
  required: HlbBand | null;
  /** Minor units added to a kg of product; null when a price is missing. */
  costPerKg: number | null;
  body: 'none' | 'some' | 'strong';
  score: number;
  /** True where a formula of this system meets no warning of our own checks. */
  sound: boolean;
  reasons: Reason[];
  /** The steps to its level, its ratio and its HLB. */
  working: Worked[];
}

/** A system that passed, not yet put into words. */
export interface Passed {
  system: EmulsifierSystem;
  wish: Wish;
  score: number;
  sound: boolean;
  reasons: Reason[];
  costPerKg: number | null;
  key: string;
}

/** A system with its verdict, ready to be put in order. */
export function passed(system: EmulsifierSystem, wish: Wish, score: number, reasons: Reason[]): Passed {
  return {
    system,
    wish,
    score,
    sound: !reasons.some((reason) => reason.warns),
    reasons,
    costPerKg: systemCost(system),
    key: membersOf(system)
      .map(({ facts }) => facts.material.id)
      .join(),
  };
}

/** A system as it is told, with its working. */
export function shown({ system, wish, score, sound, reasons, costPerKg }: Passed): RankedSystem {
  const members = membersOf(system);
  const whole = members.reduce((sum, member) => sum + member.percent, 0);
  return {
    lines: members.map((member) => ({
      materialId: member.facts.material.id,
      name: member.facts.material.tradeName,
      role: member === system.fattyAlcohol ? 'co-emulsifier' : 'emulsifier',
      percent: member.percent,
      ratioPercent: (100 * member.percent) / whole,
    })),
    levelPercent: system.levelPercent,
    offered: system.offered,
    required: demandBand(wish.required),
    costPerKg,
    body: bodyExpected(system, wish),
    score,
    sound,
    reasons,
    working: systemWorking(system, wish),
  };
}

/**
 * Sound ones first, each best first; equal scores by cost, then by materials, so that the same library always gives the
 * same order.
 */
function inOrder(a: Passed, b: Passed): number {
  if (a.sound !== b.sound) return a.sound ? -1 : 1;
  if (a.score !== b.score) return b.score - a.score;
  const cost = ({ costPerKg }: Passed): number => costPerKg ?? Infinity;
  if (cost(a) !== cost(b)) return cost(a) < cost(b) ? -1 : 1;
  return a.key.localeCompare(b.key, 'en');
}

/** How many systems of the same main emulsifier are shown, so that a choice is one. */
const MOST_ALIKE = 2;

function mainOf({ system }: Passed): string {
  return system.emulsifiers.reduce((most, member) => (member.percent > most.percent ? member : most)).facts
    .material.id;
}

/** The best, in order: at most two of each main emulsifier; more of the same only where the library gives nothing else. */
export function best(ranked: readonly Passed[], limit: number): Passed[] {
  const seen = new Map<string, number>();
  const first: Passed[] = [];
  const more: Passed[] = [];
  for (const system of [...ranked].sort(inOrder)) {
    const main = mainOf(system);
    const known = seen.get(main) ?? 0;
    seen.set(main, known + 1);
    (known < MOST_ALIKE ? first : more).push(system);
  }
  return [...first, ...more.slice(0, limit - first.length)].slice(0, limit).sort(inOrder);
}
