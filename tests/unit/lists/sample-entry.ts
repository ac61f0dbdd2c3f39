import type { MaterialEntry } from '@core/materials/list';

/** An entry of which only what a test speaks of is known. */
export function sampleEntry(id: string, known: Partial<MaterialEntry> = {}): MaterialEntry {
  return {
    id,
    photo: null,
    code: '',
    tradeName: `Material ${id}`,
    inci: '',
    supplier: '',
    suppliers: [],
    charge: null,
    architecture: null,
    emulsionType: null,
    functions: [],
    phaseOfUse: null,
    form: null,
    consistency: null,
    origin: null,
    countryOfOrigin: '',
    keepFrom: [],
    status: 'in use',
    withdrawnOn: '',
    hlb: null,
    requiredHlbOw: null,
    meltingPoint: null,
    pricePerKg: null,
    currency: null,
    notes: '',
    updatedAt: '2026-01-01T00:00:00.000Z',
    ...known,
  };
}
