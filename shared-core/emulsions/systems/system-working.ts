import { oneStep, worked } from '../../working/one-step';
import { show } from '../../working/show';
import { COMMON_PRACTICE, type Worked } from '../../working/working';
import { weightedMean } from '../blend-hlb';
import { requiredHlb } from '../required-hlb';
import { GRIFFIN_1949 } from '../sources';
import { CATIONIC_SHARE, IONIC_SHARE } from './build-system';
import { systemKind, usualLevelWorked } from './level';
import type { EmulsifierSystem } from './system';
import type { Wish } from './wish';

/** The required HLB with the numbers put in; null where it is set by hand or no oil has one. */
function requiredWorking(system: EmulsifierSystem, wish: Wish): Worked | null {
  if (wish.targetByHand || wish.required.value === null) return null;
  const type = wish.emulsionType === 'w/o' ? 'w/o' : 'o/w';
  const body = system.fattyAlcohol;
  const oils = body ? [...wish.oils, { material: body.facts.material, mass: body.percent }] : wish.oils;
  const lines = oils.map(({ material, mass }) => {
    const figure = material.figures[type === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo'];
    const { value = null, low = null, high = null } = figure ?? {};
    return { name: material.tradeName, mass, value, low, high, source: null };
  });
  const { worked: found } = requiredHlb(lines, type);
  if (body)
    found.cautions.unshift(
      `${body.facts.material.tradeName}, added for body, has to be emulsified too and is counted among the oils at ${show(body.percent)} %.`,
    );
  return found;
}

/** How the shares within the system came about. */
function ratioWorking({ emulsifiers, levelPercent, offered }: EmulsifierSystem, wish: Wish): Worked[] {
  const described = emulsifiers.filter(({ facts }) => facts.described);
  const others = emulsifiers.filter((member) => !described.includes(member));
  const workings: Worked[] = [];
  if (others.length > 0 && described.length > 0) {
    const cationic = others.some(({ facts }) => facts.charge === 'cationic');
    const share = cationic ? CATIONIC_SHARE : IONIC_SHARE;
    const what = cationic ? 'the cationic' : 'what the mean does not describe';
    const step = {
      says: `share of ${what} in the system: ${show(100 * share)} % to start from`,
      shows: `${show(levelPercent)} × ${show(share)}`,
      result: levelPercent * share,
      unit: '% of the formula',
    };
    workings.push(oneStep(step, [COMMON_PRACTICE]));
  }
  if (offered !== null) {
    const parts = described.map(({ facts, percent }) => ({ mass: percent, value: facts.hlb ?? 0 }));
    const names = described.map(({ facts }) => facts.material.tradeName).join(', ');
    const mean = weightedMean(parts, {
      says: `HLB offered by ${names}: mass-weighted mean, at the ratio that comes nearest to ${wish.required.value === null ? 'use' : 'the required HLB'}`,
      part: 'emulsifier',
      unit: '',
      sources: [GRIFFIN_1949],
      cautions: spreadCautions(offered.low, offered.high),
    });
    workings.push(mean);
  }
  return workings;
}

function spreadCautions(low: number, high: number): string[] {
  if (high - low < 0.05) return [];
  return [
    `With the lowest and highest figures of its emulsifiers it runs from ${show(low)} to ${show(high)}.`,
  ];
}

function levelWorking({ emulsifiers, levelPercent }: EmulsifierSystem, wish: Wish): Worked {
  const kind = systemKind(
    emulsifiers.map(({ facts }) => facts),
    wish.emulsionType,
  );
  const usual = usualLevelWorked(kind, wish.oilPercent);
  if (Math.abs(usual.value - levelPercent) < 1e-9) return usual;
  const step = {
    says: 'level in all, moved by the usage ranges of its members or by the level asked for',
    shows: `${show(usual.value)} → ${show(levelPercent)}`,
    result: levelPercent,
    unit: '% of the formula',
  };
  return worked([...usual.steps, step], usual.sources, usual.cautions);
}

/** The working of a proposed system: what is required, its level, the shares in it, and what it offers. */
export function systemWorking(system: EmulsifierSystem, wish: Wish): Worked[] {
  const required = requiredWorking(system, wish);
  return [...(required ? [required] : []), levelWorking(system, wish), ...ratioWorking(system, wish)];
}
