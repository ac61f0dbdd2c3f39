import type { TakingIn } from '@core/imports/content-of';
import { plain } from '@core/imports/plain';
import { planRow, type Outcome, type PlannedRow } from '@core/imports/plan-row';
import { keyOf, type KeyTarget, type TableRow } from '@core/imports/read-rows';
import type { Region } from '@core/locale/numbers';
import type { Material } from '@core/materials/material';
import type { Reader } from '@db/database';
import { materials } from '@db/materials/materials';
import { materialsByKey } from './library-keys';

export interface ImportParts {
  key: KeyTarget;
  /** The file's name, as the history and the figures' source tell it. */
  file: string;
  region: Region;
  taking: TakingIn;
}

/** What taking in has written, so that it can be taken back as one. */
export interface Written {
  added: string[];
  /** Each with what it was before, and its revision since. */
  changed: { before: Material; revision: number }[];
}

/** A table on its way into the library: planned a piece at a time, written as one, taken back as one. */
export class TableImport {
  readonly planned: PlannedRow[] = [];
  written: Written | null = null;
  private readonly byKey: ReadonlyMap<string, readonly string[]>;

  constructor(
    readonly libraryId: string,
    readonly parts: ImportParts,
    db: Reader,
  ) {
    this.byKey = materialsByKey(db, parts.key);
  }

  /** Plans some more rows; nothing is written. */
  plan(db: Reader, rows: readonly TableRow[]): Outcome[] {
    const { key, taking, region } = this.parts;
    const wanted = rows.flatMap((row) => this.byKey.get(keyOf(row, key)) ?? []);
    const held = materials.readMany(db, wanted);
    const known = (name: string): Material[] =>
      (this.byKey.get(name) ?? []).flatMap((id) => held.get(id) ?? []);
    const planned = rows.map((row) => planRow(row, { key, known, taking, region }));
    this.planned.push(...planned);
    return planned.map(({ outcome }) => outcome);
  }

  /** Whether a material of a key came into the library since, which a row would make anew. */
  cameSince(db: Reader): string | null {
    const now = materialsByKey(db, this.parts.key);
    const made = this.planned.find(
      ({ before, content }) => content && !before && now.has(plain(content[this.parts.key])),
    );
    return made?.outcome.name ?? null;
  }
}
