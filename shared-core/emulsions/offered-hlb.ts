import type { Architecture, Charge } from '../materials/vocabulary';
import { badInput, nonNegative } from '../working/inputs';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { weightedMean } from './blend-hlb';
import { meanBand, type HlbBand } from './hlb-band';
import { hlbValue } from './hlb-scale';
import { GRIFFIN_1949 } from './sources';

export interface EmulsifierLine {
  name: string;
  /** Any one unit, the same for all. */
  mass: number;
  hlb: number | null;
  /** The ends of its figure’s spread, where it has one. */
  hlbLow?: number | null;
  hlbHigh?: number | null;
  /** True where only a range is stated, so that its middle stands in for a value. */
  onlyRange?: boolean;
  charge: Charge | null;
  architecture: Architecture | null;
}

/** An emulsifier that the mean does not describe, with why. */
export interface NotDescribed {
  name: string;
  mass: number;
  hlb: number | null;
  why: string;
}

export interface OfferedHlb {
  /** The mean over classic non-ionics with an HLB; null when there is none. */
  described: Worked | null;
  /** The band that the figures’ own spread gives to `described`. */
  band: HlbBand | null;
  /** Mass % of the emulsifiers that `described` covers. */
  describedPercent: number;
  notDescribed: NotDescribed[];
  /** The mean over everything that has an HLB, marked as beyond Griffin's rule; null when none has one. */
  everything: Worked | null;
}

/**
 * What HLB a set of emulsifiers offers. Griffin's mean describes classic non-ionics; ionic, polymeric and
 * particulate emulsifiers are named as not described, and a second, marked figure includes those with an HLB.
 *
 * @throws Problem `invalid-input` for no emulsifiers, a bad mass, or an HLB out of bounds
 * Source: Griffin 1949.
 */
export function offeredHlb(lines: readonly EmulsifierLine[]): OfferedHlb {
  if (lines.length === 0)
    throw badInput('There are no emulsifiers.', 'Add an emulsifier first.', 'emulsifiers');
  for (const line of lines) {
    nonNegative(line.mass, `Mass of ${line.name}`);
    if (line.hlb !== null) hlbValue(line.hlb, `HLB of ${line.name}`);
  }
  const total = lines.reduce((sum, line) => sum + line.mass, 0);
  if (total <= 0)
    throw badInput('All emulsifiers weigh nothing.', 'Give one a mass above zero.', 'emulsifiers');
  const described = lines.filter((line) => reasonAgainst(line) === null);
  const notDescribed = lines.flatMap((line) => {
    const why = reasonAgainst(line);
    return why === null ? [] : [{ name: line.name, mass: line.mass, hlb: line.hlb, why }];
  });
  const left = notDescribed.map((line) => `${line.name}: ${line.why}.`);
  const band = bandOf(described);
  const cautions = [...left, ...rangeCautions(described), ...spreadCautions(band)];
  return {
    described: meanOf(described, 'classic non-ionic emulsifiers', cautions),
    band,
    describedPercent: (100 * described.reduce((sum, line) => sum + line.mass, 0)) / total,
    notDescribed,
    everything: meanOf(
      lines.filter((line) => line.hlb !== null),
      'all emulsifiers that have an HLB, beyond what the rule describes',
      notDescribed.some((line) => line.hlb !== null)
        ? [
            'This figure averages parts that the rule does not describe; do not read it as a required HLB met.',
          ]
        : [],
    ),
  };
}

function bandOf(lines: readonly EmulsifierLine[]): HlbBand | null {
  return meanBand(
    lines.map(({ mass, hlb, hlbLow, hlbHigh }) => {
      const value = hlb ?? 0;
      return { mass, value, low: hlbLow ?? value, high: hlbHigh ?? value };
    }),
  );
}

function rangeCautions(lines: readonly EmulsifierLine[]): string[] {
  return lines
    .filter((line) => line.onlyRange && line.mass > 0)
    .map(
      (line) =>
        `${line.name}: only a range of ${show(line.hlbLow ?? 0)} to ${show(line.hlbHigh ?? 0)} is stated; its middle, ${show(line.hlb ?? 0)}, is an estimate.`,
    );
}

function spreadCautions(band: HlbBand | null): string[] {
  if (!band || band.high - band.low < 1e-9) return [];
  return [
    `The figures are ranges: with the lowest and highest of each the mean runs from ${show(band.low)} to ${show(band.high)}.`,
  ];
}

function reasonAgainst(line: EmulsifierLine): string | null {
  if (line.architecture === 'particulate')
    return 'it stabilises as particles at the interface, which HLB does not describe';
  if (line.architecture === 'polymeric') return 'it works as a polymer, which HLB does not describe';
  if (line.charge !== null && line.charge !== 'non-ionic')
    return `it is ${line.charge}; the mean holds for non-ionics only`;
  if (line.hlb === null) return 'it has no HLB in the library';
  if (line.charge === null) return 'its charge is not known, so the mean cannot be said to hold for it';
  return null;
}

function meanOf(lines: readonly EmulsifierLine[], whose: string, cautions: readonly string[]): Worked | null {
  const parts = lines.flatMap((line) =>
    line.hlb === null || line.mass === 0 ? [] : [{ mass: line.mass, value: line.hlb }],
  );
  if (parts.length === 0) return null;
  const names = lines.filter((line) => line.mass > 0).map((line) => `${line.name} ${show(line.hlb ?? 0)}`);
  return weightedMean(parts, {
    says: `HLB offered by ${whose}: mass-weighted mean (${names.join('; ')})`,
    part: 'emulsifier',
    unit: '',
    sources: [GRIFFIN_1949],
    cautions,
  });
}
