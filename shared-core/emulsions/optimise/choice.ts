import { meanBand, type HlbBand } from '../hlb-band';
import type { Demand } from './demand';
import { keepsRule } from './pairing';
import { LEAST_USE_PERCENT, type Player } from './prepare';
import type { Choice } from './result';

/** A player at its level, % of the formula. */
export interface Level {
  player: Player;
  percent: number;
}

/** How far a solver's answer may miss a row, in % of the formula; far below what a balance shows. */
const SLACK = 1e-6;

/** The mass-weighted mean HLB over what it describes, with its spread; null over nothing. */
export function meanHlbBand(levels: readonly Level[]): HlbBand | null {
  return meanBand(
    levels
      .filter(({ player }) => player.described)
      .map(({ player: { one }, percent }) => {
        const value = one.hlb ?? 0;
        return { mass: percent, value, low: one.hlbLow ?? value, high: one.hlbHigh ?? value };
      }),
  );
}

/** The mass-weighted mean HLB over what it describes; null over nothing. */
export function meanHlb(levels: readonly Level[]): number | null {
  return meanHlbBand(levels)?.value ?? null;
}

/** Minor units that the emulsifiers add to a kg of product; null when a price is missing. */
export function costOf(levels: readonly Level[]): number | null {
  if (levels.some(({ player }) => player.one.costPerKg === null)) return null;
  return levels.reduce((sum, { player, percent }) => sum + (percent / 100) * (player.one.costPerKg ?? 0), 0);
}

function objectiveOf(levels: readonly Level[], demand: Demand): number {
  switch (demand.objective) {
    case 'least cost':
      return costOf(levels) ?? NaN;
    case 'nearest HLB':
      return Math.abs((meanHlb(levels) ?? NaN) - (demand.targetHlb ?? NaN));
    case 'fewest materials':
      return levels.length;
  }
}

/** The answer to show, largest level first. */
export function choiceOf(levels: readonly Level[], demand: Demand): Choice {
  const ordered = [...levels].sort(
    (a, b) => b.percent - a.percent || a.player.one.name.localeCompare(b.player.one.name, 'en'),
  );
  return {
    lines: ordered.map(({ player, percent }) => ({ id: player.one.id, name: player.one.name, percent })),
    totalPercent: levels.reduce((sum, level) => sum + level.percent, 0),
    hlb: meanHlb(levels),
    hlbBand: meanHlbBand(levels),
    costPerKg: costOf(levels),
    objective: objectiveOf(levels, demand),
  };
}

function hlbHolds(levels: readonly Level[], demand: Demand): boolean {
  const { targetHlb, tolerance } = demand;
  if (targetHlb === null) return true;
  const mean = meanHlb(levels);
  if (mean === null) return false;
  const described = levels.reduce((sum, level) => sum + (level.player.described ? level.percent : 0), 0);
  const others = levels.reduce((sum, level) => sum + (level.player.described ? 0 : level.percent), 0);
  const excess = Math.abs(mean - targetHlb) - tolerance;
  return excess * described <= SLACK && others <= described + SLACK;
}

/**
 * Which demands an answer breaks, worked out from the answer alone and not from the model: empty when all hold.
 */
export function brokenDemands(levels: readonly Level[], demand: Demand): string[] {
  const total = levels.reduce((sum, level) => sum + level.percent, 0);
  const ids = new Set(levels.map(({ player }) => player.one.id));
  const groups = levels.map(({ player }) => player.groups);
  const inUse = levels.every(
    ({ player: { one }, percent }) =>
      percent >= Math.max(one.minPercent, LEAST_USE_PERCENT) - SLACK && percent <= one.maxPercent + SLACK,
  );
  const checks: [boolean, string][] = [
    [total >= demand.totalMinPercent - SLACK && total <= demand.totalMaxPercent + SLACK, 'total'],
    [levels.length >= 1 && levels.length <= demand.atMost, 'number of materials'],
    [inUse, 'usage range'],
    [demand.pinned.every((id) => ids.has(id)), 'pins'],
    [demand.excluded.every((id) => !ids.has(id)), 'exclusions'],
    [hlbHolds(levels, demand), 'HLB'],
    ...demand.rules.map((rule): [boolean, string] => [keepsRule(rule, groups), rule]),
  ];
  return checks.filter(([holds]) => !holds).map(([, name]) => name);
}
