import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { KINDS } from '@core/cases/kinds';
import { runCase } from '@core/cases/run-case';
import { publishedCaseFiles } from './published';

const named = z.object({ id: z.string(), kind: z.string(), source: z.string().min(1) });

/** Each worked example is its own test, named by its source. */
for (const file of publishedCaseFiles()) {
  const cases = z.array(z.unknown()).parse(JSON.parse(readFileSync(file, 'utf8')));
  describe(`published examples: ${basename(file, '.json')}`, () => {
    for (const raw of cases) {
      const { id, kind, source } = named.parse(raw);
      it(`${id} (${kind}), after ${source}`, () => {
        expect(runCase(raw, id)).toMatchObject({ passed: true });
      });
    }
  });
}

describe('the kinds of example', () => {
  const published = [
    ['hlb-ethoxylate', 'hlb-ester', 'hlb-mass', 'hlb-davies', 'required-hlb', 'blend-hlb', 'blend-share'],
    ['emulsifier-masses', 'eacn-mix', 'cc-mix', 'hld-ionic', 'hld-nonionic', 'hld-zero-temperature'],
    ['hld-zero-salinity', 'neutralisation', 'undissociated-percent', 'undissociated-amount'],
    ['stokes-velocity', 'rcf', 'accelerated-ageing', 'q10-shelf-life', 'activation-energy'],
    ['suspension-viscosity', 'molar-mass', 'dilution', 'density-fill'],
    ['hlb-structure', 'neutralise-to-ph', 'density-from-mass', 'volume-from-mass', 'pycnometer'],
    ['displacement-specific-gravity', 'water-activity-norrish', 'buffer-ph', 'buffer-ratio'],
    ['buffer-capacity', 'weak-acid-ph', 'ionic-strength', 'buffer-ph-activity', 'pit-mix'],
    ['kunieda-hlb-temperature', 'pit-salt-shift', 'glycerol-viscosity', 'viscosity-two-temperatures'],
    ['expressed-as', 'legal-check', 'allergen-amount', 'allergens-declared', 'ingredient-order'],
    ['product-exposure', 'aggregate-exposure', 'sed', 'margin-of-safety', 'max-concentration-for-mos'],
    ['ttc-dose', 'natural-origin-index', 'natural-origin-content'],
    ['minimum-weight', 'readability-sd', 'scale-mpe', 'sample-sd', 'prepackage-tne', 'prepackage-limits'],
    ['mean-acceptance-factor', 'prepackage-min-mean', 'prepackage-verdict', 'us-mav'],
    ['us-sample-correction-factor', 'linear-regression', 'stability-crossing', 'stability-shelf-life'],
    ['q1e-extrapolation', 'arrhenius-energy', 'arrhenius-rate'],
    ['hansen-total', 'hansen-distance', 'hansen-red', 'hansen-blend', 'hoftyzer-van-krevelen', 'fedors'],
    ['hlb-solubility-parameter', 'preservation-iso11930', 'preservation-ph-eur', 'preservation-usp51'],
    ['log-reduction', 'log-to-percent', 'micro-limit'],
    ['refutas-index', 'viscosity-refutas', 'viscosity-log-mix', 'viscosity-cube-root'],
  ].flat();

  it('are all those of the published format', () => {
    expect(Object.keys(KINDS).sort()).toEqual(published.sort());
  });
});

/** Examples for the kinds of which no published case is at hand; each says where its figure comes from. */
const further = [
  {
    kind: 'hlb-ethoxylate',
    inputs: { oxyethylenePercent: 58.65 },
    expect: { value: 11.7, unit: 'HLB', tolerance: 0.05 },
    source: 'Griffin 1954, E/5; laureth-6 stands at 11.7 (disagreements of the reference, 3)',
  },
  {
    kind: 'hlb-ester',
    inputs: { saponificationNumber: 161, acidNumber: 198 },
    expect: { value: 3.737374, unit: 'HLB', tolerance: 0.0001 },
    source: 'Griffin 1954, glyceryl stearate, exact value of the printed 3.8 (disagreements, griffin-gms)',
  },
  {
    kind: 'rcf',
    inputs: { radiusCm: 5, rpm: 10_000 },
    expect: { value: 5590, unit: '× g', tolerance: 5 },
    source: 'exam note at passetra.com: r 5 cm, 10 000 rpm, about 5590 × g',
  },
  {
    kind: 'molar-mass',
    inputs: { formula: 'CuSO4·5H2O' },
    expect: { value: 249.68, unit: 'g/mol', tolerance: 0.01 },
    source: 'CRC Handbook, copper(II) sulfate pentahydrate 249.685 (from memory)',
  },
  {
    kind: 'hld-zero-temperature',
    inputs: { salinityPercent: 0, eacn: 8, cc: 1.2, alcoholTerm: 0, b: 0.13, k: 0.15, cT: 0.06 },
    expect: { value: 25, unit: '°C', tolerance: 0.5 },
    source: 'C10E4 with octane inverts at 25 °C: PACN about 8.0, Marquez course notes, table 2.3',
  },
  {
    kind: 'cc-mix',
    inputs: {
      surfactants: [
        { moleFraction: 0.5, cc: 1.76 },
        { moleFraction: 0.5, cc: -0.24 },
      ],
    },
    expect: { value: 0.76, unit: '', tolerance: 0.005 },
    source: 'equal C12E4 and C12E6 average to C12E5 on the ethoxylate correlation (Acosta 2008, from memory)',
  },
  {
    kind: 'eacn-mix',
    inputs: {
      oils: [
        { fraction: 0.5, eacn: 8 },
        { fraction: 0.5, eacn: 12 },
      ],
    },
    expect: { value: 10, unit: '', tolerance: 0.001 },
    source: 'octane and dodecane mix to decane on the alkane scale (Cayias 1976, from memory)',
  },
  {
    kind: 'neutralisation',
    inputs: {
      acidMass: 1,
      acidValue: 1000,
      baseMolarMass: 56.106,
      baseEquivalents: 1,
      baseConcentrationPercent: 100,
      fraction: 1,
    },
    expect: { value: 1, unit: 'g', tolerance: 1e-9 },
    source: 'the definition of acid value: 1 g of acid value 1000 takes 1 g KOH',
  },
];

describe('further examples, each with its source', () => {
  for (const one of further)
    it(`${one.kind}, after ${one.source}`, () => {
      expect(runCase({ ...one, id: one.kind }, one.kind)).toMatchObject({ passed: true, why: '' });
    });
});
