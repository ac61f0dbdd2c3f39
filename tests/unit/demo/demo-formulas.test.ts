import { yieldPercent } from '@core/batches/outcome';
import { describe, expect, it } from 'vitest';
import { checkFormula } from '@core/checks/all';
import { formula, phaseLetter } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import { partPpm } from '@core/materials/composition';
import { SOLID_FORMS } from '@core/materials/vocabulary';
import { emulsifies, formulaByCode, library, lineCount, soundFormulas, usedIn } from './demo-shelf';

const each = soundFormulas;

describe('the demonstration formulas', () => {
  it('are at least nine, covering each kind of product', () => {
    expect(library.formulas.length).toBeGreaterThanOrEqual(9);
    const types = new Set(library.formulas.map(({ productType }) => productType));
    for (const type of ['o/w emulsion', 'w/o emulsion', 'cationic o/w emulsion', 'gel', 'anhydrous'] as const)
      expect(types).toContain(type);
    expect(new Set(library.formulas.map(({ use }) => use))).toEqual(new Set(['leave-on', 'rinse-off']));
  });

  it.each(each)('$code is a valid draft', (one) => {
    const read = formula.safeParse(one);
    expect(read.error?.issues ?? []).toEqual([]);
    expect(read.data).toEqual(one);
  });

  it.each(each)('$code totals exactly 100 % with one q.s. line', (one) => {
    const shares = formulaShares(one);
    expect(shares.totalPpm).toBe(1_000_000);
    expect([...shares.byLine.values()].every((ppm) => ppm > 0)).toBe(true);
    const lines = one.phases.flatMap((phase) => phase.lines);
    expect(lines.filter(({ toHundred }) => toHundred)).toHaveLength(1);
    const written = lines.reduce((sum, line) => sum + line.ppm, 0);
    expect(written, 'the q.s. line’s written share also fits').toBe(1_000_000);
    expect(shares.byLine.size).toBe(lineCount(one));
  });

  it.each(each)('$code has steps that refer to its phases and say what to look for', (one) => {
    const phases = new Set(one.phases.map(({ id }) => id));
    expect(one.steps.length).toBeGreaterThanOrEqual(3);
    for (const step of one.steps) {
      expect(step.phaseIds.length).toBeGreaterThan(0);
      for (const id of step.phaseIds) expect(phases).toContain(id);
      expect(step.lookFor).not.toBe('');
      expect(step.temperatureC).not.toBeNull();
      expect(step.minutes).not.toBeNull();
    }
    const handled = new Set(one.steps.flatMap(({ phaseIds }) => phaseIds));
    one.phases.forEach(({ id }, index) => expect(handled, phaseLetter(index)).toContain(id));
  });

  it.each(each)('%s uses each material once, within its advised range, and none that is archived', (one) => {
    const used = usedIn(one);
    expect(new Set(used.map(({ material }) => material.id)).size).toBe(used.length);
    for (const { material, ppm } of used) {
      expect(material.status, material.code).toBe('in use');
      expect(ppm, material.code).toBeGreaterThanOrEqual(material.usage?.minPpm ?? 0);
      expect(ppm, material.code).toBeLessThanOrEqual(material.usage?.maxPpm ?? 1_000_000);
    }
  });

  it.each(each)('$code overheats nothing and melts what it must', (one) => {
    for (const { material, phaseC } of usedIn(one)) {
      const { maxTemperature, meltingPoint } = material.figures;
      expect(phaseC, material.code).toBeLessThanOrEqual(maxTemperature?.value ?? 200);
      const solid = material.form !== null && SOLID_FORMS.includes(material.form);
      if (solid && material.phaseOfUse === 'oil')
        expect(phaseC, material.code).toBeGreaterThan(meltingPoint?.high ?? meltingPoint?.value ?? -1);
    }
  });

  it.each(each)('$code keeps cationics and anionics apart', (one) => {
    const charges = new Set(usedIn(one).map(({ material }) => material.charge));
    expect(charges.has('cationic') && charges.has('anionic')).toBe(false);
  });

  it.each(each)('$code neutralises its acid emulsifiers and polymers', (one) => {
    const used = usedIn(one);
    if (!used.some(({ material }) => material.needsNeutralising)) return;
    expect(used.some(({ material }) => material.functions.includes('base'))).toBe(true);
  });

  it.each(each)('$code is preserved within the working pH, when it holds water', (one) => {
    const used = usedIn(one);
    const water = used.some(({ material }) => material.composition.some(({ inci }) => inci === 'Aqua'));
    const preservatives = used.filter(({ material }) => material.functions.includes('preservative'));
    expect(preservatives.length > 0).toBe(water);
    for (const { material } of used) {
      const window = material.figures.workingPh;
      if (!window || one.target.phLow === null || one.target.phHigh === null) continue;
      expect(one.target.phLow, material.code).toBeGreaterThanOrEqual(window.low ?? 0);
      expect(one.target.phHigh, material.code).toBeLessThanOrEqual(window.high ?? 14);
    }
  });

  it.each(each)('$code keeps within the limits of the law as recorded', (one) => {
    const used = usedIn(one);
    const amountOf = (inci: string) =>
      used.reduce((sum, { material, ppm }) => {
        const part = material.composition.find((known) => known.inci === inci);
        return sum + (part ? (ppm * partPpm(part)) / 1_000_000 : 0);
      }, 0);
    for (const { material } of used) {
      const main = material.composition[0]?.inci;
      if (material.legalLimit && main)
        expect(amountOf(main), material.code).toBeLessThanOrEqual(material.legalLimit.ppm);
    }
  });

  it.each(each)('$code holds as much water as its kind usually does', (one) => {
    const water = usedIn(one).reduce(
      (sum, { material, ppm }) => sum + (material.code === 'H-100' ? ppm : 0),
      0,
    );
    // Common practice, no source: creams and milks 60 to 80 % water, gels up to 90 %.
    const [low, high] =
      one.productType === 'anhydrous' ? [0, 0] : [600_000, one.productType === 'gel' ? 900_000 : 800_000];
    expect(water).toBeGreaterThanOrEqual(low);
    expect(water).toBeLessThanOrEqual(high);
  });
});

describe('the program’s own checks', () => {
  it.each(each)('$code has nothing to stop it or to warn of', (one) => {
    const materials = new Map(library.materials.map((material) => [material.id, material]));
    const serious = checkFormula({ content: one, materials }).filter(({ severity }) => severity !== 'note');
    expect(serious.map(({ title }) => title)).toEqual([]);
  });
});

describe('each system follows the trade’s rules', () => {
  it('the mixed cream has an anionic and a non-ionic emulsifier', () => {
    const charges = usedIn(formulaByCode('F-003')).filter(({ material }) => emulsifies(material));
    expect(new Set(charges.map(({ material }) => material.charge))).toEqual(
      new Set(['anionic', 'non-ionic']),
    );
  });

  it('the w/o cream has a waxy and a liquid emulsifier of HLB 3 to 6', () => {
    const used = usedIn(formulaByCode('F-005')).filter(({ material }) => emulsifies(material));
    expect(new Set(used.map(({ material }) => material.consistency))).toEqual(new Set(['waxy', 'oily']));
    for (const { material } of used) {
      expect(material.figures.hlb?.value).toBeGreaterThanOrEqual(3);
      expect(material.figures.hlb?.value).toBeLessThanOrEqual(6);
    }
  });

  it('the conditioner has a cationic with a non-ionic of HLB above 10', () => {
    const used = usedIn(formulaByCode('F-006'));
    expect(used.some(({ material }) => emulsifies(material) && material.charge === 'cationic')).toBe(true);
    expect(
      used.some(({ material }) => material.charge === 'non-ionic' && (material.figures.hlb?.value ?? 0) > 10),
    ).toBe(true);
  });

  it('the vanishing cream neutralises the part of the acid that its note states', () => {
    const used = usedIn(formulaByCode('F-004'));
    const percent = (code: string) =>
      (used.find(({ material }) => material.code === code)?.ppm ?? 0) / 10_000;
    // Definition of the acid value (mg KOH/g, USP <401>); KOH 56.106 g/mol, triethanolamine 149.19 g/mol.
    const acidMmol = (percent('A-301') * 206) / 56.106;
    const baseMmol = (percent('C-204') / 149.19) * 1000;
    expect((100 * baseMmol) / acidMmol).toBeCloseTo(22, 0);
  });

  it.each([
    ['F-007', 'C-202', 0.1, 0.4],
    ['F-010', 'C-204', 1, 1.5],
  ] as const)(
    '%s holds about the published parts of base per part of acid polymer',
    (code, base, active, parts) => {
      const used = usedIn(formulaByCode(code));
      const polymer = used
        .filter(({ material }) => material.needsNeutralising)
        .reduce((sum, { ppm }) => sum + ppm, 0);
      const alkali = (used.find(({ material }) => material.code === base)?.ppm ?? 0) * active;
      // 0.4 part of sodium hydroxide (Handbook of Pharmaceutical Excipients, carbomer) and 1.5 parts of
      // triethanolamine (carbomer data sheet TDS-237) to one part of carbomer at about pH 7; from memory.
      expect(alkali / polymer).toBeGreaterThan(parts * 0.85);
      expect(alkali / polymer).toBeLessThan(parts * 1.1);
    },
  );
});

describe('the versions and batches of the demonstration', () => {
  it('say that they are invented, and weigh exactly what was asked for', () => {
    expect(library.batches.length).toBeGreaterThan(2);
    for (const batch of library.batches) {
      expect(batch.note).toContain('never made or tested');
      const version = library.versions.find((one) => one.id === batch.versionId);
      const lines = version?.content.phases.flatMap((phase) => phase.lines) ?? [];
      expect(batch.lines.map((line) => line.lineId)).toEqual(lines.map((line) => line.id));
      expect(batch.lines.reduce((sum, line) => sum + line.targetMg, 0)).toBe(batch.totalMg);
      for (const line of lines) expect(version?.materials[line.materialId]).toBeDefined();
    }
    expect(library.outcomes.size).toBe(2);
    for (const [id, outcome] of library.outcomes) {
      const of = library.batches.find((one) => one.id === id);
      // What is obtained is less than what is weighed: some stays in the vessel.
      expect(yieldPercent(outcome, of?.totalMg ?? 0)).toBeGreaterThan(90);
      expect(yieldPercent(outcome, of?.totalMg ?? 0)).toBeLessThan(100);
      expect(outcome.remarks).toMatch(/invented/i);
    }
  });
});
