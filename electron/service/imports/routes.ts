import { SUBJECTS, type Subject } from '@core/imports/subjects';
import { keyTarget, tableRow } from '@core/imports/table-row';
import { Problem } from '@core/problems/problem';
import { lineText } from '@core/quantities/text';
import { readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { formulasTaker } from './subjects/formulas';
import { limitsTaker } from './subjects/limits';
import { materialsTaker } from './subjects/materials';
import { TableImport, type ImportParts } from './table-import';
import { takeBack, takeIn } from './take-in';

/** So many rows are planned at a request: each such takes a few tens of milliseconds. */
const MOST_ROWS = 300;
/** The most that a table may hold, and how many tables are kept for taking back. */
const MOST_IN_ALL = 100_000;
const KEPT = 5;

const beginning = z.object({
  about: z.enum(SUBJECTS).default('materials'),
  key: keyTarget,
  file: lineText(200),
});
const some = z.object({ rows: z.array(tableRow).max(MOST_ROWS) });

function gone(): Problem {
  return new Problem({
    code: 'not-found',
    title: 'This table is no longer held here.',
    advice: 'Choose its file again. What was taken in stays taken in.',
  });
}

/** A table of each kind, held as one of records that this module knows no more of. */
function tableOf(context: ServiceContext, about: Subject, parts: ImportParts): TableImport {
  const { library } = context.session.current();
  const held = <T>(table: T): TableImport => table as unknown as TableImport;
  switch (about) {
    case 'formulas':
      return held(new TableImport(library.id, parts.file, formulasTaker(context, library)));
    case 'limits':
      return held(new TableImport(library.id, parts.file, limitsTaker(library)));
    case 'materials':
      return held(new TableImport(library.id, parts.file, materialsTaker(library, parts)));
  }
}

/** Tables on their way in. They are held in memory: nothing of them is in the library until it is taken in. */
export function importsRoutes(context: ServiceContext) {
  const tables = new Map<string, TableImport>();
  const table = (id: string): TableImport => {
    const held = tables.get(id);
    if (held && held.libraryId === context.session.current().library.id) return held;
    throw gone();
  };
  const begin = ({ about, key, file }: z.infer<typeof beginning>): string => {
    const { library } = context.session.current();
    const { languageRegion, currency } = readSettings(library);
    const taking = {
      source: `taken in from ${file}`,
      today: context.now().toISOString().slice(0, 10),
      currency,
    };
    const id = context.newId();
    tables.set(id, tableOf(context, about, { key, file, region: languageRegion, taking }));
    for (const old of [...tables.keys()].slice(0, -KEPT)) tables.delete(old);
    return id;
  };
  return new Hono()
    .post('/', validBody(beginning), (c) => c.json({ id: begin(c.req.valid('json')) }, 201))
    .post('/:id/rows', validBody(some), async (c) => {
      const held = table(c.req.param('id'));
      const { rows } = c.req.valid('json');
      if (held.planned.length + rows.length > MOST_IN_ALL)
        throw new Problem({
          code: 'too-large',
          title: `A table can hold ${MOST_IN_ALL.toLocaleString('en')} rows at most.`,
          advice: 'Split it into several files, and take them in one after another.',
        });
      return c.json(await held.plan(context, rows));
    })
    .post('/:id/take-in', (c) => c.json(takeIn(context, table(c.req.param('id')))))
    .post('/:id/take-back', (c) => c.json(takeBack(context, table(c.req.param('id')))))
    .delete('/:id', (c) => {
      tables.delete(c.req.param('id'));
      return c.body(null, 204);
    });
}
