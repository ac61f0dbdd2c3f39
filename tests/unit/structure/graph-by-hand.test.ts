import fc from 'fast-check';
import { findAlkoxyUnits } from '@core/structure/alkoxy-units';
import { findHeads } from '@core/structure/heads';
import { Graph } from '@core/structure/graph';
import { parseSmiles } from '@core/structure/parse-smiles';
import { readStructure } from '@core/structure/read-structure';
import { sorbitanOxygens } from '@core/structure/sorbitan';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const graphOf = (smiles: string): Graph => {
  const { atoms, rings } = parseSmiles(smiles);
  return new Graph(atoms, rings);
};

describe('the atoms of a molecule', () => {
  const lactic = graphOf('CC(O)C(=O)O');
  const [methyl, middle] = lactic.atoms;

  it('know their neighbours, by element and by the order of the bond', () => {
    expect(lactic.neighbours(methyl!)).toEqual([middle]);
    expect(lactic.bonded(middle!, 'C')).toHaveLength(2);
    expect(lactic.bonded(middle!, 'O', 1)).toHaveLength(1);
    expect(lactic.bonded(middle!, 'O', 2)).toEqual([]);
    expect(lactic.atom(99)).toBeUndefined();
  });

  it('are reached from any of them, and no further than where one is told to stop', () => {
    for (const start of lactic.atoms) expect(lactic.reach(start, () => false)).toHaveLength(6);
    // From the methyl on, not past the carbon with the hydroxyl.
    expect(lactic.reach(methyl!, (atom) => atom === middle)).toEqual([methyl]);
    expect(lactic.reach(middle!, (atom) => atom.element === 'O').map(({ element }) => element)).toEqual([
      'C',
      'C',
      'C',
    ]);
  });

  it('bear the hydrogens that are not written: CH3, CH, OH', () => {
    expect(lactic.atoms.map(({ element, hydrogens }) => `${element}${hydrogens}`)).toEqual([
      'C3',
      'C1',
      'O1',
      'C0',
      'O0',
      'O1',
    ]);
    const chain = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(chain, (carbons) => {
        // An alkane of n carbons has 2 n + 2 hydrogens.
        const { atoms } = graphOf('C'.repeat(carbons));
        expect(atoms.reduce((sum, { hydrogens }) => sum + hydrogens, 0)).toBe(2 * carbons + 2);
      }),
      { numRuns: 15 },
    );
  });
});

describe('the heads of a molecule', () => {
  it.each([
    ['CCCCCCCC(=O)O', ['carboxylic-acid']],
    ['CCCCCCCC(=O)[O-]', ['carboxylate']],
    ['CCCCCCCC(=O)OCC', ['ester']],
    ['CCCCCCCCOS(=O)(=O)[O-]', ['sulfate']],
    ['CCCCCCCCOCCOS(=O)(=O)[O-]', ['ether-sulfate']],
    ['CCCCCCCCS(=O)(=O)[O-]', ['sulfonate']],
    ['CCCCCCCCOP(=O)(O)O', ['phosphate']],
    ['CCCCCCCCN(C)C', ['tertiary-amine']],
    ['CCCCCCCC[N+](C)(C)C', ['quaternary-ammonium']],
    ['CCCCCCCC[NH+](C)C', ['other']],
    ['CCCCCCCCO', []],
    ['CCCCCCCCOCC', []],
    ['CCCCOC(=O)CC(=O)OCCCC', ['ester', 'ester']],
    // The amide's carbon and its nitrogen are told each by itself.
    ['CCCCCCCC(=O)NC', ['other', 'other']],
  ])('of %s are %j', (smiles, kinds) => {
    expect(findHeads(graphOf(smiles)).map(({ kind }) => kind)).toEqual(kinds);
  });

  it('claim no atom twice, but where two lie side by side', () => {
    for (const smiles of [
      'CCCCCCCC(=O)OCC(O)COC(=O)CCCCCCC',
      'CCCCOS(=O)(=O)[O-]',
      'OC(=O)CC(O)(CC(=O)O)C(=O)O',
    ]) {
      const claimed = findHeads(graphOf(smiles)).flatMap(({ atoms }) => atoms);
      expect(new Set(claimed).size, smiles).toBe(claimed.length);
    }
  });
});

describe('the units of a polyether', () => {
  const units = (smiles: string) => {
    const graph = graphOf(smiles);
    const ethers = graph.atoms.filter(
      (atom) => atom.element === 'O' && graph.bonded(atom, 'C', 1).length === 2,
    );
    return findAlkoxyUnits(graph, new Set(ethers.map(({ index }) => index)));
  };
  const kinds = (smiles: string): string[] =>
    units(smiles)
      .map(({ kind }) => kind)
      .sort();

  it.each([
    ['ethylene glycol', 'OCCO', 1, 0],
    ['PEG-3', 'OCCOCCOCCO', 3, 0],
    ['propylene glycol', 'CC(O)CO', 0, 1],
    ['propanediol', 'OCCCO', 0, 1],
    ['dipropylene glycol', 'CC(O)COCC(C)O', 0, 2],
    ['butylene glycol', 'CC(O)CCO', 0, 0],
    ['butanediol', 'OCCCCO', 0, 0],
    ['glycerol', 'OCC(O)CO', 0, 0],
    ['a PEG-2 PPG-1 ether', 'CCCCOCCOCCOCC(C)O', 2, 1],
    ['ethanolamine', 'NCCO', 1, 0],
    ['triethanolamine', 'OCCN(CCO)CCO', 3, 0],
    // In a ring: no chain of a polyether.
    ['dioxane', 'C1COCCO1', 0, 0],
    ['diethyl ether', 'CCOCC', 0, 0],
  ])('%s has %s: %i of oxyethylene and %i of oxypropylene', (_, smiles, ethylene, propylene) => {
    const found = kinds(smiles);
    expect(found.filter((kind) => kind === 'oxyethylene')).toHaveLength(ethylene);
    expect(found.filter((kind) => kind === 'oxypropylene')).toHaveLength(propylene);
  });

  it('take an ether oxygen each, and no oxygen two of them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 6 }), (eo, po) => {
        const found = units(`CCCC${'OCC'.repeat(eo)}${'OCC(C)'.repeat(po)}O`);
        const taken = found.flatMap(({ etherOxygen }) => etherOxygen ?? []);
        expect(found).toHaveLength(eo + po);
        expect(new Set(taken).size).toBe(taken.length);
        // The chain begins with an ether oxygen, so that every unit has one.
        expect(taken).toHaveLength(eo + po);
      }),
      { numRuns: 20 },
    );
  });
});

describe('sorbitan', () => {
  it.each([
    ['sorbitan', 'OCC(O)C1OCC(O)C1O', 4],
    ['its laurate', 'CCCCCCCCCCCC(=O)OCC(O)C1OCC(O)C1O', 4],
    ['isosorbide', 'OC1COC2C1OCC2O', 0],
    ['glucose', 'OCC1OC(O)C(O)C(O)C1O', 0],
    ['tetrahydrofuran', 'C1CCOC1', 0],
    ['ribose', 'OCC1OC(O)C(O)C1O', 0],
  ])('%s has %i of its oxygens', (_, smiles, count) =>
    expect(sorbitanOxygens(graphOf(smiles)).size).toBe(count),
  );
});

describe('a salt or mixture', () => {
  it.each([
    ['two oils', 'CCCCCC.CCCCCCCC', /mixture of 2 parts/],
    ['an acid and a base that have not reacted', 'CCCCCCCC(=O)O.OCCN(CCO)CCO', /mixture of 2 parts/],
    ['ions that do not balance', 'CCCC(=O)[O-].[Mg+2]', /mixture of 2 parts/],
    ['a soap of two metals', 'CCCC(=O)[O-].CCCC(=O)[O-].[Na+].[K+]', /mixture of 4 parts/],
    [
      'an anionic and a cationic surfactant',
      `${'C'.repeat(12)}OS(=O)(=O)[O-].${'C'.repeat(16)}[N+](C)(C)C`,
      /mixture of 2 parts/,
    ],
  ])('%s is refused, with what to enter instead', (_, smiles, says) => {
    const problem = refusal(() => readStructure(smiles), says);
    expect(problem.advice).toBe(
      'Enter one substance, alone or with the small counter-ions that balance its charge.',
    );
    expect(problem.fields.map(({ path }) => path)).toEqual(['smiles']);
  });
});
