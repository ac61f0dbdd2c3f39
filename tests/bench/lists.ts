import { toParams } from '@core/lists/address';
import { listQuery } from '@core/lists/query';
import { NOUN_LISTS, NOUNS } from '@service/lists/nouns';
import { openBenchLibrary } from './bench-library';
import { filledLibrary } from './fill-library';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';
import { fillRecord, TWENTY_YEARS } from './record-generator';

const PAGE = 50;
const TYPED = ['polysorbate', 'glyceryl stearate', 'B-01234', 'F-0123', 'cetearyl', 'xanthan gum', 'shea'];

/** The twenty-year library: the first page of every list in every order, and the finder at each key. */
export async function benchLists({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const { folder } = await filledLibrary((engine) => fillRecord(engine, TWENTY_YEARS));
  const library = await openBenchLibrary(folder);
  const ask = async (path: string): Promise<void> => {
    const answer = await library.service.request(`/api${path}`);
    if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}.`);
    await answer.text();
  };
  try {
    const figures: BenchFigure[] = [];
    for (const noun of NOUNS) {
      const { description } = NOUN_LISTS[noun];
      const orders = description.sorts.flatMap(({ key }) =>
        [false, true].map((descending) => listQuery(description, { sortBy: key, descending, limit: PAGE })),
      );
      const paths = orders.map((query) => `/${noun}?${toParams(description, query)}`);
      // An order is made when it is first asked for.
      for (const path of paths) await ask(path);
      const times: number[] = [];
      for (let round = 0; round < (quick ? 3 : 10); round++)
        for (const path of paths) times.push(await timeOf(() => ask(path)));
      figures.push(
        figureFrom(`first page of ${noun} in any order, twenty-year library`, times, { atMost: 20 }),
      );
    }
    const keys = TYPED.flatMap((word) => Array.from(word, (_, at) => word.slice(0, at + 1)));
    const times: number[] = [];
    for (let round = 0; round < (quick ? 2 : 6); round++)
      for (const text of keys) times.push(await timeOf(() => ask(`/find?text=${encodeURIComponent(text)}`)));
    return [...figures, figureFrom('finder at each key, twenty-year library', times, { atMost: 20 })];
  } finally {
    await library.discard();
  }
}
