import type { BenchState } from '@core/emulsions/bench/bench-state';
import { kindOfSheet } from './kind';
import { everyMaterial, type MaterialsById } from './materials-by-id';

interface Subject {
  state: BenchState;
  materials: MaterialsById;
}

export const working = kindOfSheet<'working', Subject>('working', {
  read(library, { bench }) {
    const lines = [...bench.oils, ...bench.emulsifiers, ...bench.rest];
    const materials = everyMaterial(
      library,
      lines.map((line) => line.materialId),
    );
    return { subject: { state: bench, materials }, name: [bench.title || 'system'] };
  },
  async setting() {
    const { setWorking } = await import('../set-working');
    return (subject, settings, printedAt) =>
      setWorking(subject.state, subject.materials, settings, printedAt);
  },
});
