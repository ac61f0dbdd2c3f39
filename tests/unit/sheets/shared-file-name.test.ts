import type { Formula } from '@core/formulas/formula';
import { blankMaterial, type Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';
import { CREAM, sampleLine } from './samples';

describe('the file of a formula sheet for sharing', () => {
  it('is not called after a trade name', async () => {
    const { ask, service } = await serviceWith('empty');
    const { body: material } = await ask<Material>(
      'POST',
      '/materials',
      blankMaterial('Tallowmere VQ 7', 'Ceteareth-20'),
    );
    const phases = [{ ...CREAM.phases[0]!, lines: [sampleLine(material, 'q.s.')] }];
    const content = { ...CREAM, name: 'Tallowmere VQ 7 balm', phases, steps: [] };
    const { body: formula } = await ask<Formula>('POST', '/formulas', content);
    await ask('PUT', `/formulas/${formula.id}`, { revision: formula.revision, content });
    const nameOf = async (forSharing: boolean): Promise<string | null> => {
      const answer = await service.request('/api/sheets', {
        method: 'POST',
        body: JSON.stringify({ kind: 'formula', formulaId: formula.id, forSharing, tradeNames: false }),
        headers: { 'Content-Type': 'application/json' },
      });
      return answer.headers.get('content-disposition');
    };
    expect(await nameOf(false)).toContain('tallowmere-vq-7-balm');
    expect(await nameOf(true)).toContain('ceteareth-20-balm');
  });
});
