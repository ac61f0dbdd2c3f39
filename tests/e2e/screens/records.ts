import type { Formula } from '../../../shared-core/formulas/formula';
import { formulaLines } from '../../../shared-core/formulas/shares';
import type { Material } from '../../../shared-core/materials/material';
import type { HostProcess } from '../host-process';
import type { Records } from './openers';

interface Named {
  id: string;
}

/** Edits a material of a formula as another author, so that it has a history and differs from the version. */
async function changeUsed(host: HostProcess, formulaId: string): Promise<string> {
  const { formula } = (await host.get(`/api/formulas/${formulaId}`)) as { formula: Formula };
  const [line] = formulaLines(formula);
  if (!line) throw new Error('The formula has no line.');
  const path = `/api/materials/${line.materialId}`;
  const { revision, ...content } = (await host.get(path)) as Material;
  await host.send('PATCH', '/api/settings', { recordedBy: 'N. Invented' });
  const changed = { ...content, notes: 'Smells of hay since the lot of March.', countryOfOrigin: 'Iceland' };
  await host.send('PUT', path, { revision, content: changed });
  await host.send('PUT', `/api/formulas/${formulaId}`, {
    revision: formula.revision,
    content: { ...formula, notes: 'Softer since the second trial.' },
  });
  return line.materialId;
}

/** Records a version of the demonstration's first formula and makes a batch of it; tells where they are. */
export async function recordsOf(host: HostProcess): Promise<Records> {
  const { rows } = (await host.get('/api/materials?limit=6')) as { rows: Named[] };
  const { rows: formulas } = (await host.get('/api/formulas')) as { rows: Named[] };
  const [formula, other] = formulas;
  if (!formula || !other) throw new Error('The library has no formula.');
  const version = (await host.post(`/api/formulas/${formula.id}/versions`, {
    reason: 'As it went to the first customers',
    recordedBy: 'M. Invented',
  })) as Named;
  const plan = {
    formulaId: formula.id,
    versionId: version.id,
    size: { by: 'mass', massMg: 2_500_000 },
    overagePpm: 20_000,
    readabilityMg: 100,
    note: 'For the spring market',
  };
  const batch = (await host.post('/api/batches', plan)) as Named;
  const used = await changeUsed(host, formula.id);
  const first = async (path: string): Promise<string> => {
    const { rows: found } = (await host.get(path)) as { rows: Named[] };
    if (!found[0]) throw new Error(`Nothing is found at ${path}.`);
    return found[0].id;
  };
  const substance = await first('/api/substances?text=sodium+benzoate');
  const limit = await first('/api/limits?text=benzoates');
  const materials = rows.map((row) => row.id);
  const formulasOf = { formula: formula.id, other: other.id, version: version.id };
  return { materials, ...formulasOf, batch: batch.id, used, substance, limit };
}
