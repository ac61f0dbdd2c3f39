import type { serviceWith } from '../unit/service/service-fixture';

type Of = Awaited<ReturnType<typeof serviceWith>>;

/** Two series of trials: one for a formula with a trial chosen, one put together at the bench. */
export async function seriesOf({ ask }: Of): Promise<object[]> {
  type Rows = { rows: { id: string }[] };
  const { body: found } = await ask<Rows>('GET', '/materials?limit=3');
  const { body: formulas } = await ask<Rows>('GET', '/formulas?limit=1');
  const lines = (levelPpm: number) =>
    found.rows.map(({ id: materialId }, at) => {
      const ppm = at < 2 ? levelPpm / 2 : 1_000_000 - levelPpm;
      return { materialId, part: at < 2 ? 'emulsifier' : 'other', ppm, mg: Math.round((ppm * 50_000) / 1e6) };
    });
  const trial = (label: string, hlb: number | null, levelPpm: number, result: string) => ({
    ...{ label, hlb, levelPpm, result },
    lines: lines(levelPpm),
  });
  const own = { batchMg: 50_000, readabilityMg: 10 };
  return [
    {
      ...{
        ...own,
        title: 'HLB 9 to 11; “fine”',
        formulaId: formulas.rows[0]!.id,
        targetHlb: 10.25,
        chosen: 1,
      },
      trials: [
        trial('HLB 9', 9, 35_002, '-thin-,\nparts "overnight"'),
        trial('HLB 11.5', 11.5, 40_000, '=good'),
      ],
      notes: 'Stirred by hand, 5 min; then left',
    },
    {
      ...{ ...own, title: 'Levels', formulaId: null, targetHlb: null, chosen: null, readabilityMg: 1 },
      trials: [trial('3 %', null, 30_000, '')],
      notes: '',
    },
  ];
}
