import type { HostProcess } from '../host-process';
import type { Records } from './screens';

interface Named {
  id: string;
}

/** Records a version of the demonstration's first formula and makes a batch of it; tells where they are. */
export async function recordsOf(host: HostProcess): Promise<Records> {
  const { rows } = (await host.get('/api/materials?limit=6')) as { rows: Named[] };
  const { rows: formulas } = (await host.get('/api/formulas')) as { rows: Named[] };
  const [formula] = formulas;
  if (!formula) throw new Error('The library has no formula.');
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
  return { materials: rows.map((row) => row.id), formula: formula.id, version: version.id, batch: batch.id };
}
