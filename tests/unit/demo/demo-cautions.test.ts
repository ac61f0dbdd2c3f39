import { batchLines } from '@core/batches/plan-batch';
import { smallLines } from '@core/batches/small-lines';
import { allergenRuleOn } from '@core/labelling/allergens';
import type { Hazard } from '@core/materials/vocabulary';
import { batchSheet } from '@core/sheets/batch-sheet';
import { exposureSheet } from '@core/sheets/exposure-sheet';
import { formulaSheet } from '@core/sheets/formula-sheet';
import { labelSheet } from '@core/sheets/label-sheet';
import { describe, expect, it } from 'vitest';
import { library, soundFormulas, usedIn } from './demo-shelf';

const each = soundFormulas;
const materials = Object.fromEntries(library.materials.map((one) => [one.id, one]));
const PRINTED = '2026-09-02T09:00:00.000Z';

describe('the demonstration where it can hurt', () => {
  it.each(each)('$code: every hot step carries a caution', (one) => {
    const hottest = new Map(one.phases.map((phase) => [phase.id, phase.temperatureC ?? 0]));
    for (const step of one.steps) {
      const heat = Math.max(step.temperatureC ?? 0, ...step.phaseIds.map((id) => hottest.get(id) ?? 0));
      if (heat >= 50) expect(step.caution, step.instruction).not.toBe('');
    }
  });

  it.each(each)(
    '$code: every step that takes in acid or caustic says what it does and what to wear',
    (one) => {
      const burning: Hazard[] = ['caustic', 'strong acid'];
      for (const phase of one.phases) {
        const lines = phase.lines.map((line) => materials[line.materialId]!);
        const burns = lines.some(
          (material) =>
            material.hazards.some((hazard) => burning.includes(hazard)) ||
            material.functions.includes('acid') ||
            material.functions.includes('base'),
        );
        if (!burns) continue;
        const steps = one.steps.filter((step) => step.phaseIds.includes(phase.id));
        const said = steps.map((step) => step.caution).join(' ');
        expect(said, phase.title).toMatch(/acid|Corrosive|caustic/i);
        expect(said, phase.title).toMatch(/goggles|face shield/);
      }
    },
  );

  it.each(each)('$code says “never made or tested” on its sheet and on its batch record', (one) => {
    const version = {
      ...{ id: one.id, formulaId: one.id, number: 1, recordedAt: PRINTED, recordedBy: '', reason: '' },
      content: one,
      materials: Object.fromEntries(usedIn(one).map(({ material }) => [material.id, material])),
    };
    const plan = {
      ...{ versionId: one.id, overagePpm: 0, readabilityMg: 100, note: '' },
      size: { by: 'mass' as const, massMg: 1_000_000 },
    };
    const { totalMg, lines } = batchLines(one, plan);
    const batch = { ...plan, id: one.id, number: 'B-1', createdAt: PRINTED, totalMg, lines };
    const record = JSON.stringify(batchSheet(batch, version, library.settings, PRINTED));
    expect(record).toContain('never made or tested');
    // Beside each such line, and what it means once, in the box.
    expect(record).toContain('no hazards recorded');
    expect(record).toContain('recorded, which proves nothing: read the safety data sheet');
    expect(record).toContain('sanitised');
    // On a balance that reads 0.1 g a kilogram's smallest lines are weighed as a premix, with its computation.
    const small = smallLines(one, batch);
    expect(record.includes('Lines to weigh with care')).toBe(small.length > 0);
    for (const { premix } of small)
      if (premix) expect(record).toContain(`mixture ${premix.stages.length} to weigh into the batch`);
    for (const forSharing of [true, false]) {
      const sheet = formulaSheet(
        { content: one, materials: version.materials, version },
        { forSharing, tradeNames: true },
        library.settings,
        PRINTED,
      );
      expect(JSON.stringify(sheet), `shared: ${forSharing}`).toContain('never made or tested');
    }
    const printed = { content: one, materials: version.materials, version };
    const label = { form: 'EU', allergens: allergenRuleOn('2026-09-02') } as const;
    for (const sheet of [
      labelSheet(printed, label, library.settings, PRINTED),
      exposureSheet(printed, library.settings, PRINTED),
    ])
      expect(JSON.stringify(sheet)).toContain('never made or tested');
  });
});
