import { readAhead } from '@service/library/read-ahead';
import type { ServiceStart } from './service-calls';

// The utility process that keeps the library: main moves windows meanwhile. What it is started with is its last
// argument, as JSON. All that is imported here is small: the library's file is being read while the service is loaded,
// and what main asks meanwhile waits.

const { asked, ...folders } = JSON.parse(process.argv.at(-1) ?? '') as ServiceStart;
const programs = import.meta.dirname;
const reader = readAhead(programs, { ...asked, config: folders.config });
const { keepLibrary } = await import('./keep-library');
keepLibrary({ ...folders, workersFolder: programs, reader });
