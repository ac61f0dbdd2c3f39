import { Problem } from '@core/problems/problem';

/** A name that every system takes for a folder or file, from words of a maker’s. @throws Problem `invalid-input` */
export function folderName(name: string): string {
  const safe = name
    .replace(/[<>:"/\\|?*\u0000-\u001f]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '');
  if (safe === '' || /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(safe))
    throw new Problem({
      code: 'invalid-input',
      title: 'This name cannot be the name of a folder.',
      advice: 'Use letters, digits, spaces and hyphens.',
      fields: [{ path: 'name', message: 'Use letters, digits, spaces and hyphens.' }],
    });
  return safe;
}
