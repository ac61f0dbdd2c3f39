import { shareDigits } from '../locale/numbers';
import { ppmFromPercent, WHOLE_PPM } from '../quantities/share';
import type { Field } from './field';
import { judgedDemands } from './judge';
import { WATER } from './roles';
import type { Shares } from './search';
import type { Player } from './player';

/** Below this a share did not move, %. */
const STILL = 1e-6;

/** Rounds what moved to a step; what is left over goes to the water, else to the largest that moved. */
function atStep(shares: Shares, step: number): Map<Player, number> {
  const ppm = new Map<Player, number>();
  for (const [player, percent] of shares) {
    const still = Math.abs(percent - player.now) < STILL;
    ppm.set(player, still ? ppmFromPercent(player.now) : Math.round(ppmFromPercent(percent) / step) * step);
  }
  const left = WHOLE_PPM - [...ppm.values()].reduce((sum, one) => sum + one, 0);
  if (left === 0) return ppm;
  const moved = [...shares.keys()].filter(
    (player) => Math.abs((shares.get(player) ?? 0) - player.now) >= STILL,
  );
  const taker =
    [...ppm.keys()].find(({ role }) => role === WATER) ??
    [...(moved.length > 0 ? moved : shares.keys())].sort((a, b) => (ppm.get(b) ?? 0) - (ppm.get(a) ?? 0))[0];
  if (taker) ppm.set(taker, (ppm.get(taker) ?? 0) + left);
  return ppm;
}

/** The shares in ppm, 1,000,000 together, as round as the formula's own while every demand holds. */
export function roundedShares(field: Field, shares: Shares): Map<Player, number> {
  const own = field.players.filter(({ now, role }) => now > 0 && role !== WATER);
  for (let digits = shareDigits(own.map(({ now }) => ppmFromPercent(now))); digits < 4; digits += 1) {
    const ppm = atStep(shares, 10 ** (4 - digits));
    const percent = new Map([...ppm].map(([player, one]) => [player, one / 10_000]));
    const whole = [...ppm.values()].every((one) => one > 0);
    if (whole && judgedDemands(field, percent).every(({ broken }) => !broken)) return ppm;
  }
  return atStep(shares, 1);
}
