import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { DAVIES_GROUPS, DAVIES_GROUP_IDS } from '@core/emulsions/davies-groups';
import { HLD_COEFFICIENTS } from '@core/emulsions/hld-coefficients';
import { KNOWN_ACIDS, KNOWN_BASES } from '@core/neutralisation/acids-and-bases';
import { theoreticalAcidValue } from '@core/neutralisation/neutralise';
import { rcf } from '@core/physics/centrifuge';
import { ORGANIC_ACIDS } from '@core/preservation/organic-acids';
import { undissociatedPercent } from '@core/preservation/undissociated';
import { publishedValues } from './published';

const basis = z.enum(['read', 'memory']);

describe('Davies’ group numbers', () => {
  const { groups } = publishedValues(
    'davies-groups',
    z.object({
      groups: z.array(z.object({ id: z.string(), group: z.string(), number: z.number(), retrieved: basis })),
    }),
  );

  it('are the published ones, row by row, each with how it was had', () => {
    expect(DAVIES_GROUP_IDS.length).toBe(groups.length);
    const ours = DAVIES_GROUP_IDS.map((id) => {
      const { group, number, source } = DAVIES_GROUPS[id];
      return { id, group, number, retrieved: source.basis };
    });
    expect(ours).toEqual(groups);
  });
});

describe('pKas of preserving acids', () => {
  const alternative = z.object({ pKa: z.number() });
  const { pKa } = publishedValues(
    'preservatives',
    z.object({
      pKa: z.array(
        z.object({
          inci: z.string(),
          pKa: z.union([z.number(), z.array(z.number())]),
          retrieved: basis,
          alternatives: z.array(alternative).optional(),
        }),
      ),
    }),
  );

  it.each(ORGANIC_ACIDS)('$inci: all published values, the chosen one first', (acid) => {
    const published = pKa.find((one) => one.inci === acid.inci);
    expect(acid.pKas[0]?.pKa).toBe(published?.pKa);
    expect(acid.pKas.slice(1).map((one) => one.pKa)).toEqual(
      (published?.alternatives ?? []).map((one) => one.pKa),
    );
    expect(acid.pKas[0]?.source.basis).toBe(published?.retrieved);
  });
});

describe('undissociated acid, tables of Steinberg 2005', () => {
  const row = z.object({
    pKa: z.number(),
    published: z.array(z.number()),
    recomputed: z.array(z.number()),
    cellsNotReproduced: z.array(z.object({ pH: z.number() })),
  });
  const { undissociatedTables } = publishedValues(
    'preservatives',
    z.object({
      undissociatedTables: z.array(
        z.object({ source: z.string(), pH: z.array(z.number()), rows: z.record(z.string(), row) }),
      ),
    }),
  );
  const cells = undissociatedTables.flatMap((table) =>
    Object.entries(table.rows).flatMap(([inci, one]) =>
      table.pH.map((pH, column) => ({
        inci,
        pH,
        pKa: one.pKa,
        published: one.published[column] ?? Number.NaN,
        recomputed: one.recomputed[column] ?? Number.NaN,
        follows: !one.cellsNotReproduced.some((cell) => cell.pH === pH),
        source: table.source.slice(0, 40),
      })),
    ),
  );

  it.each(cells)('$inci at pH $pH ($source)', ({ pKa, pH, published, recomputed, follows }) => {
    const got = undissociatedPercent(pKa, pH).value;
    expect(got).toBeCloseTo(recomputed, 2);
    // Cells that the reference lists as not following from their own pKa are shown to users, not matched.
    if (follows) expect(Math.abs(got - published)).toBeLessThanOrEqual(0.51);
  });
});

describe('acids and bases', () => {
  const { acids, bases } = publishedValues(
    'neutralisation',
    z.object({
      acids: z.array(
        z.object({
          inci: z.string(),
          molarMass: z.number(),
          basicity: z.number(),
          theoreticalAcidValue: z.number(),
          acidValueSpec: z.array(z.number()).nullable(),
          pKa: z.array(z.number()).default([]),
          retrieved: basis,
        }),
      ),
      bases: z.array(
        z.object({
          inci: z.string(),
          molarMass: z.number(),
          pKaConjugateAcid: z.number().nullable().default(null),
        }),
      ),
    }),
  );

  it('carry the published molar masses, acid groups, monograph ranges and pKas', () => {
    const ours = KNOWN_ACIDS.map((acid) => ({
      inci: acid.inci,
      molarMass: acid.molarMass,
      basicity: acid.equivalents,
      acidValueSpec: acid.acidValueRange,
      pKa: acid.pKas,
      retrieved: acid.source.basis,
    }));
    const published = acids.map((acid) => ({ ...acid, theoreticalAcidValue: undefined }));
    expect(ours).toEqual(published);
    const bare = KNOWN_BASES.map(({ inci, molarMass, pKaConjugateAcid }) => ({
      inci,
      molarMass,
      pKaConjugateAcid,
    }));
    expect(bare).toEqual(bases);
  });

  it.each(acids)('$inci: theoretical acid value as published', (acid) => {
    expect(theoreticalAcidValue(acid.molarMass, acid.basicity).value).toBeCloseTo(
      acid.theoreticalAcidValue,
      0,
    );
  });
});

describe('HLD coefficients', () => {
  const { coefficients } = publishedValues(
    'hld',
    z.object({
      coefficients: z.array(z.object({ name: z.string(), value: z.union([z.number(), z.string()]) })),
    }),
  );
  const names: Record<string, string> = { K: 'K', alphaT: 'αT', cT: 'cT', 'b (NaCl)': 'b', 'b (CaCl2)': 'b' };

  it('are the published ones, in order', () => {
    const published = coefficients
      .filter((one) => one.name in names)
      .map((one) => ({ symbol: names[one.name], value: one.value }));
    expect(HLD_COEFFICIENTS.map(({ symbol, value }) => ({ symbol, value }))).toEqual(published);
  });
});

describe('the centrifuge constant', () => {
  const { rcf: published } = publishedValues(
    'physics',
    z.object({ rcf: z.object({ exactConstant: z.number() }) }),
  );

  it('is the trade’s rounding of (2π/60)² / 100 / g, within 0.03 %', () => {
    expect(rcf(1, 1).value / published.exactConstant).toBeCloseTo(1, 3);
  });
});
