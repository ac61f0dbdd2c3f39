import { Molecule } from 'openchemlib';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readFileSync } from 'node:fs';
import { daviesHlb } from '@core/emulsions/davies';
import { hlbByAllMethods } from '@core/emulsions/hlb-methods';
import { ATOMIC_WEIGHTS } from '@core/structure/atomic-weights';
import { CHAINS, HEADS, smilesOfPick } from '@core/structure/chain-and-head';
import type { ChainId, HeadId } from '@core/structure/chain-and-head';
import { hlbInputOf } from '@core/structure/hlb-of-structure';
import { molarMassOfFormula } from '@core/structure/formula-mass';
import { molarMassOfSmiles } from '@core/structure/molar-mass';
import { readStructure } from '@core/structure/read-structure';
import { publishedCaseFiles, publishedValues } from './published';

describe('molar mass against OpenChemLib', () => {
  const picks = (Object.keys(CHAINS) as ChainId[]).flatMap((chain) =>
    (Object.keys(HEADS) as HeadId[]).map((head) => ({ chain, head, smiles: smilesOfPick(chain, head, 5) })),
  );

  it.each(picks)('$chain with $head', ({ smiles }) => {
    const formula = Molecule.fromSmiles(smiles).getMolecularFormula();
    // OpenChemLib holds an older table; sulfur's 32.066 against 32.06 moves a sulfate most.
    expect(Math.abs(molarMassOfSmiles(smiles).value / formula.relativeWeight - 1)).toBeLessThan(2.5e-5);
    expect(molarMassOfFormula(formula.formula).value).toBeCloseTo(molarMassOfSmiles(smiles).value, 6);
  });
});

describe('atomic weights against OpenChemLib’s older table', () => {
  it.each(Object.entries(ATOMIC_WEIGHTS))('%s', (element, weight) => {
    // A charge keeps the parser from adding hydrogens to a bare metal.
    const { relativeWeight } = Molecule.fromSmiles(
      element === 'Al' ? '[Al+3]' : `[${element}]`,
    ).getMolecularFormula();
    expect(Math.abs(relativeWeight / weight - 1)).toBeLessThan(3e-4);
  });
});

describe('molar mass against the table of acids and bases (IUPAC weights, computed elsewhere)', () => {
  const { acids, bases } = publishedValues(
    'neutralisation',
    z.object({
      acids: z.array(z.object({ inci: z.string(), molarMass: z.number() })),
      bases: z.array(z.object({ inci: z.string(), molarMass: z.number() })),
    }),
  );
  const structures: Record<string, string> = {
    'Purified Stearic Acid (>= 90 % C18)': 'CCCCCCCCCCCCCCCCCC(=O)O',
    'Oleic Acid': 'CCCCCCCCC=CCCCCCCCC(=O)O',
    'Palmitic Acid': 'CCCCCCCCCCCCCCCC(=O)O',
    'Myristic Acid': 'CCCCCCCCCCCCCC(=O)O',
    'Lauric Acid': 'CCCCCCCCCCCC(=O)O',
    'Citric Acid (anhydrous)': 'OC(=O)CC(O)(C(=O)O)CC(=O)O',
    'Citric Acid Monohydrate': 'OC(=O)CC(O)(C(=O)O)CC(=O)O.O',
    'Lactic Acid': 'CC(O)C(=O)O',
    'Sodium Hydroxide': '[Na+].[OH-]',
    'Potassium Hydroxide': '[K+].[OH-]',
    Triethanolamine: 'OCCN(CCO)CCO',
    Tromethamine: 'NC(CO)(CO)CO',
    'Aminomethyl Propanol': 'CC(C)(N)CO',
  };
  const known = [...acids, ...bases].filter(({ inci }) => inci in structures);

  it.each(known)('$inci', ({ inci, molarMass }) => {
    expect(molarMassOfSmiles(structures[inci] ?? '').value).toBeCloseTo(molarMass, 3);
  });
});

describe('groups found in a structure are those that Davies 1957 counted (from memory)', () => {
  const hlbCases = publishedCaseFiles().find((file) => file.endsWith('hlb.json')) ?? '';
  const davies = z
    .array(
      z.object({ id: z.string(), inputs: z.object({ groups: z.record(z.string(), z.number()).optional() }) }),
    )
    .parse(JSON.parse(readFileSync(hlbCases, 'utf8')));
  const structures: Record<string, string> = {
    'davies-sls': smilesOfPick('c12', 'sulfate-na', null),
    'davies-koleate': smilesOfPick('c18-1', 'soap-k', null),
    'davies-oleicacid': smilesOfPick('c18-1', 'acid', null),
    'davies-ethanol': 'CCO',
    'davies-propanol': 'CCCO',
    'davies-gms': smilesOfPick('c18', 'glyceryl', null),
    'davies-pgl': smilesOfPick('c12', 'propylene-glycol', null),
    'davies-sorblaurate': smilesOfPick('c12', 'sorbitan', null),
    'davies-sorbpalmitate': smilesOfPick('c16', 'sorbitan', null),
    'davies-sorbstearate': smilesOfPick('c18', 'sorbitan', null),
  };

  it.each(Object.entries(structures))('%s', (id, smiles) => {
    const published = davies.find((one) => one.id === id)?.inputs.groups;
    expect(readStructure(smiles).groups).toEqual(published);
  });

  it('polysorbate 80 counts as printed beside it: 16.475 by plain count', () => {
    const { groups } = readStructure(smilesOfPick('c18-1', 'polysorbate', 20));
    expect(daviesHlb(groups).value).toBeCloseTo(16.475, 9);
  });
});

describe('Griffin from a structure against published HLBs', () => {
  const published = publishedValues('hlb', z.array(z.object({ inci: z.string(), hlb: z.number() })));
  // Ethoxylates made of one chain; published figures are of grades, so they meet to 0.15.
  const ethoxylates: [string, ChainId, HeadId, number][] = [
    ['Steareth-2', 'c18', 'peg-ether', 2],
    ['Steareth-10', 'c18', 'peg-ether', 10],
    ['Steareth-20', 'c18', 'peg-ether', 20],
    ['Steareth-21', 'c18', 'peg-ether', 21],
    ['Steareth-100', 'c18', 'peg-ether', 100],
    ['Ceteth-2', 'c16', 'peg-ether', 2],
    ['Ceteth-10', 'c16', 'peg-ether', 10],
    ['Ceteth-20', 'c16', 'peg-ether', 20],
    ['Oleth-2', 'c18-1', 'peg-ether', 2],
    ['Oleth-10', 'c18-1', 'peg-ether', 10],
    ['Oleth-20', 'c18-1', 'peg-ether', 20],
    ['Laureth-4', 'c12', 'peg-ether', 4],
    ['Laureth-23', 'c12', 'peg-ether', 23],
    ['PEG-8 Stearate', 'c18', 'peg-ester', 8],
    ['PEG-100 Stearate', 'c18', 'peg-ester', 100],
  ];

  it.each(ethoxylates)('%s', (inci, chain, head, units) => {
    const known = published.find((one) => one.inci === inci)?.hlb ?? Number.NaN;
    const { methods } = hlbByAllMethods(hlbInputOf(readStructure(smilesOfPick(chain, head, units))));
    const griffin = methods.find((one) => one.method === 'ethoxylate');
    expect(griffin?.applies && Math.abs(griffin.worked.value - known) <= 0.15).toBe(true);
  });

  it('propylene glycol stearate: 3.4 by ester and 1.8 by groups (disagreements of the reference, 3)', () => {
    const { methods } = hlbByAllMethods(
      hlbInputOf(readStructure(smilesOfPick('c18', 'propylene-glycol', null))),
    );
    const value = (method: string) =>
      methods.flatMap((one) => (one.method === method && one.applies ? [one.worked.value] : []))[0];
    expect(value('ester')).toBeCloseTo(3.4, 1);
    expect(value('davies')).toBeCloseTo(1.8, 9);
  });

  it('laureth-6: 11.7 by Griffin and 5.2 by Davies (disagreements of the reference, 3)', () => {
    const { spread } = hlbByAllMethods(hlbInputOf(readStructure(smilesOfPick('c12', 'peg-ether', 6))));
    expect(spread?.low).toBeCloseTo(5.2, 1);
    expect(spread?.high).toBeCloseTo(11.7, 1);
  });
});
