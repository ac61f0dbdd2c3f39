import { z } from 'zod';
import { lineText } from '../quantities/text';
import { PROVENANCES } from './vocabulary';

/** What is known of a physical or formulating property of a material: its name, unit and believable bounds. */
interface FigureKindFacts {
  label: string;
  unit: string;
  min: number;
  max: number;
  /** Decimals shown. */
  digits: number;
  /** True where the property is a window (a working pH range) rather than one value with a spread. */
  range: boolean;
}

export const FIGURE_KINDS = {
  hlb: { label: 'HLB', unit: '', min: 0, max: 40, digits: 1, range: false },
  requiredHlbOw: { label: 'Required HLB, o/w', unit: '', min: 0, max: 40, digits: 1, range: false },
  requiredHlbWo: { label: 'Required HLB, w/o', unit: '', min: 0, max: 40, digits: 1, range: false },
  eacn: { label: 'EACN', unit: '', min: -20, max: 40, digits: 1, range: false },
  cc: { label: 'Characteristic curvature (Cc)', unit: '', min: -20, max: 20, digits: 2, range: false },
  oxyethylenePercent: { label: 'Oxyethylene', unit: '%', min: 0, max: 100, digits: 1, range: false },
  cloudPoint: {
    label: 'Cloud point (1 % in water)',
    unit: '°C',
    min: -20,
    max: 150,
    digits: 0,
    range: false,
  },
  meltingPoint: { label: 'Melting or drop point', unit: '°C', min: -120, max: 400, digits: 0, range: true },
  density: { label: 'Density', unit: 'g/mL', min: 0.05, max: 8, digits: 3, range: false },
  viscosity: { label: 'Viscosity', unit: 'mPa·s', min: 0, max: 1e9, digits: 0, range: true },
  phAsSupplied: { label: 'pH of the material', unit: '', min: 0, max: 14, digits: 1, range: true },
  workingPh: { label: 'Works at pH', unit: '', min: 0, max: 14, digits: 1, range: true },
  maxTemperature: {
    label: 'Highest processing temperature',
    unit: '°C',
    min: 0,
    max: 300,
    digits: 0,
    range: false,
  },
  acidValue: { label: 'Acid value', unit: 'mg KOH/g', min: 0, max: 2000, digits: 1, range: false },
  saponificationValue: {
    label: 'Saponification value',
    unit: 'mg KOH/g',
    min: 0,
    max: 2000,
    digits: 1,
    range: false,
  },
  iodineValue: { label: 'Iodine value', unit: 'g I₂/100 g', min: 0, max: 450, digits: 1, range: false },
  pKa: { label: 'pKa', unit: '', min: -10, max: 20, digits: 2, range: false },
  molarMass: { label: 'Molar mass', unit: 'g/mol', min: 1, max: 10_000_000, digits: 2, range: false },
  equivalents: { label: 'Equivalents per molecule', unit: '', min: 1, max: 20, digits: 0, range: false },
  naturalOriginIndex: {
    label: 'Natural origin index (ISO 16128)',
    unit: '',
    min: 0,
    max: 1,
    digits: 3,
    range: false,
  },
  activePercent: { label: 'Active matter', unit: '%', min: 0, max: 100, digits: 1, range: false },
} as const satisfies Record<string, FigureKindFacts>;

export type FigureKind = keyof typeof FIGURE_KINDS;
/** The figures that are set side by side when materials are compared. */
export const FIGURES_COMPARED: readonly FigureKind[] = [
  'hlb',
  'requiredHlbOw',
  'requiredHlbWo',
  'meltingPoint',
  'workingPh',
];
export const FIGURE_NAMES = Object.keys(FIGURE_KINDS) as FigureKind[];

const number = z.number('Write this as a number.').nullable();

/**
 * A figure of a material with where it comes from. `value` is the one used in computing; `low` and `high`
 * are a supplier's range or the spread of the sources. At least one of the three is present.
 */
export const figure = z.object({
  low: number,
  value: number,
  high: number,
  provenance: z.enum(PROVENANCES, 'Say where the figure comes from.'),
  source: lineText(500),
});
export type Figure = z.infer<typeof figure>;

/** The value to compute with: the stated one, else the midpoint of the range. Null when nothing is known. */
export function figureValue(
  known: (Pick<Figure, 'low' | 'value' | 'high'> & Partial<Figure>) | undefined,
): number | null {
  if (!known) return null;
  if (known.value !== null) return known.value;
  if (known.low !== null && known.high !== null) return (known.low + known.high) / 2;
  return known.low ?? known.high;
}

function figureOf(kind: FigureKind) {
  const { label, unit, min, max } = FIGURE_KINDS[kind];
  const bounds = `${label} must lie between ${min} and ${max}${unit ? ` ${unit}` : ''}.`;
  const inBounds = (value: number | null): boolean => value === null || (value >= min && value <= max);
  return figure
    .refine(
      (f) => f.low !== null || f.value !== null || f.high !== null,
      `${label}: enter a value, or remove it.`,
    )
    .refine((f) => inBounds(f.low) && inBounds(f.value) && inBounds(f.high), bounds)
    .refine(
      (f) =>
        (f.low ?? -Infinity) <= (f.value ?? f.high ?? Infinity) &&
        (f.value ?? f.low ?? -Infinity) <= (f.high ?? Infinity),
      `${label}: the lower end must not be above the value or the upper end.`,
    );
}

/** The figures a material has, by kind; what is not known is absent. */
export const figures = z
  .object(
    Object.fromEntries(FIGURE_NAMES.map((kind) => [kind, figureOf(kind).optional()])) as Record<
      FigureKind,
      z.ZodOptional<typeof figure>
    >,
  )
  .strict();
export type Figures = z.infer<typeof figures>;
