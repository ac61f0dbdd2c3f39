import type { TargetSpecification } from '../formulas/formula';
import { formatNumber } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import type { Fact } from './kit/facts';

/** The decimals that a number needs, up to `most`. */
function decimalsOf(value: number, most: number): number {
  return (/\.(\d*?)0*$/.exec(value.toFixed(most))?.[1] ?? '').length;
}

function between(
  low: number | null,
  high: number | null,
  unit: string,
  region: Region,
  digits: number,
): string {
  // Both ends in the same decimals: 5.0–5.8.
  const written = [low, high].map((end) => (end === null ? 0 : decimalsOf(end, digits)));
  const show = (value: number): string =>
    formatNumber(value, region, { min: Math.max(...written), max: digits });
  const range =
    low !== null && high !== null
      ? [...new Set([show(low), show(high)])].join('–')
      : low !== null
        ? `at least ${show(low)}`
        : high !== null
          ? `at most ${show(high)}`
          : '';
  return range && unit ? `${range}\u00a0${unit}` : range;
}

/** What the product is measured against, in words; what is not specified has an empty value. */
export function targetFacts(target: TargetSpecification, region: Region): (Fact & { value: string })[] {
  const viscosity = between(target.viscosityLow, target.viscosityHigh, 'mPa·s', region, 0);
  return [
    { label: 'Appearance', value: target.appearance },
    { label: 'Odour', value: target.odour },
    { label: 'Colour', value: target.colour },
    { label: 'pH', value: between(target.phLow, target.phHigh, '', region, 2) },
    { label: 'Viscosity', value: [viscosity, target.viscosityMethod].filter(Boolean).join('; ') },
    { label: 'Density', value: between(target.densityLow, target.densityHigh, 'g/mL', region, 3) },
    { label: 'Microbiology', value: target.microbiology },
  ];
}
