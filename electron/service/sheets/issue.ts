import { MATERIAL } from '@core/materials/noun';
import type { SheetRequest } from '@core/sheets/requests';
import { materialRecords } from '@db/materials/materials';
import { issueNow, issueOf } from '@db/record/issues';
import type { ServiceContext } from '../context';
import { doingNow, record } from '../record/records';

/**
 * Gives what is printed or saved on paper the number of its issue, where its kind of sheet bears one. A library that is
 * only read gives none: the sheet then says that it is not issued.
 */
export function issueSheet(context: ServiceContext, request: SheetRequest): void {
  const { library } = context.session.current();
  if (request.kind !== 'material' || !request.issue || library.readOnly) return;
  const material = record(context, materialRecords, request.materialId);
  if (issueOf(library, MATERIAL, material) !== null) return;
  const doing = doingNow(context);
  library.transaction((tx) => issueNow(tx, MATERIAL, material, doing));
}
