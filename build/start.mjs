import { requireNode } from './steps/node-version.mjs';

const HELP = `Usage: npm start -- [options]

  --library DIR   open the library in this folder; where there is none yet, the first
                  screen offers to make it there
  --demo          open a fresh demonstration library in a temporary folder
  --backups DIR   keep that library's backups in this folder, on another disk say; kept in
                  mind from then on (with --library, in the browser)
  --port N        serve on this port of 127.0.0.1, in the browser
  --no-open       do not open a window or browser; print the address only
  --help          show this help`;

requireNode();
const { Halt, node, run, runScript, say } = await import('./steps/run.mjs');
const { readFlags } = await import('./steps/flags.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { ensureOutput } = await import('./steps/output.mjs');
const { hasDisplay, obtainElectron } = await import('./steps/window.mjs');
const { resolve } = await import('node:path');

function flags() {
  const given = readFlags(
    {
      library: { type: 'string' },
      demo: { type: 'boolean' },
      backups: { type: 'string' },
      port: { type: 'string' },
      'no-open': { type: 'boolean' },
      help: { type: 'boolean' },
    },
    HELP,
  );
  if (given.demo && given.library !== undefined) throw new Halt('Give either --demo or --library, not both.');
  if (given.library === '') throw new Halt('--library needs a folder.');
  if (given.backups !== undefined && (given.library === undefined || given.backups === '')) {
    throw new Halt('--backups needs a folder, and --library with it.');
  }
  if (given.port !== undefined && !(/^\d{1,5}$/.test(given.port) && Number(given.port) <= 65535)) {
    throw new Halt(`--port needs a whole number from 0 to 65535, not “${given.port}”.`);
  }
  return given;
}

/** The Electron program where a window is wanted and possible. */
async function windowProgram(given) {
  if (given['no-open'] || given.port !== undefined || given.backups !== undefined || !hasDisplay())
    return undefined;
  if (process.platform === 'linux' && process.getuid() === 0) {
    console.log('As root, a browser window cannot be sandboxed: Stillroom opens in the browser instead.');
    return undefined;
  }
  return obtainElectron();
}

await runScript(async () => {
  const given = flags();
  if (given.help) {
    console.log(HELP);
    return 0;
  }
  await ensureDependencies();
  await ensureOutput();
  // npm runs scripts in the project's folder; a relative path means the folder that the maker is in.
  const from = process.env.INIT_CWD ?? process.cwd();
  const library = given.library === undefined ? [] : ['--library', resolve(from, given.library)];
  const opening = given.demo ? ['--demo'] : library;
  const program = await windowProgram(given);
  if (program) {
    say('Opening Stillroom.');
    return run(program, ['.', ...opening]);
  }
  const serving = [
    ...(given.backups === undefined ? [] : ['--backups', resolve(from, given.backups)]),
    ...(given.port === undefined ? [] : ['--port', given.port]),
    ...(given['no-open'] ? ['--no-open'] : []),
  ];
  return node('out/main/loopback.js', [...opening, ...serving]);
});
