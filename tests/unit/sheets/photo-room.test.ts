import { randomBytes } from 'node:crypto';
import type { Material } from '@core/materials/material';
import { sheetPhoto, sheetPhotos } from '@service/sheets/photo-data';
import { expect, test } from 'vitest';
import { serviceWith } from '../service/service-fixture';
import { png } from './sample-pictures';

const SIDE = 2600;

test('photos of a sheet stop where they would take too much memory together, and say so', async () => {
  const { service, session } = await serviceWith();
  const { library } = session.current();
  // Noise, which packing cannot make smaller: some 20 MB a file, and as much unpacked.
  const row = 1 + SIDE * 3;
  const data = randomBytes(row * SIDE);
  for (let at = 0; at < data.length; at += row) data[at] = 0;
  const body = new Uint8Array(png({ width: SIDE, height: SIDE, data }));
  const kept = await service.request('/api/attachments', { method: 'POST', body });
  const { sha256 } = (await kept.json()) as { sha256: string };
  const photographed = Array.from({ length: 12 }, (_, at): Pick<Material, 'id' | 'photo'> => ({
    id: `${at}`,
    photo: sha256,
  }));

  const photos = Object.values(await sheetPhotos(library, photographed));
  const shown = photos.filter((photo) => 'dataUrl' in photo);
  expect(shown.length).toBeGreaterThanOrEqual(3);
  expect(shown.length).toBeLessThanOrEqual(5);
  const told = photos.flatMap((photo) => ('cannotPrint' in photo ? [photo.cannotPrint] : []));
  expect(told).toHaveLength(12 - shown.length);
  for (const why of told) expect(why).toMatch(/too large together/);
  // Alone it has all of the room.
  expect(await sheetPhoto(library, sha256)).toHaveProperty('dataUrl');
});
