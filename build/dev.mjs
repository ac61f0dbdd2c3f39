import { requireNode } from './steps/node-version.mjs';

const HELP = `Usage: npm run dev -- [options]

Serves the page from its sources, reloading itself, and the service behind it, restarted at each change.

  --library DIR   work on the library in this folder
  --demo          work on a fresh demonstration library (made anew at each restart of the service)
  --help          show this help`;

requireNode();
const { Halt, root, runScript, say } = await import('./steps/run.mjs');
const { readFlags } = await import('./steps/flags.mjs');
const { ensureDependencies } = await import('./steps/install.mjs');
const { resolve } = await import('node:path');
const { spawn } = await import('node:child_process');
const { request } = await import('node:http');

/** Exchanges the key of a printed address, as a browser's first visit does, for the cookie of the run. */
async function enter(address) {
  const response = await fetch(address);
  const [cookie] = (response.headers.get('set-cookie') ?? '').split(';');
  return { origin: new URL(address).origin, host: new URL(address).host, cookie };
}

/** Runs the loopback host from its sources; `current()` is the one that printed its address last. */
function startService(args) {
  const tsx = resolve(root, 'node_modules/tsx/dist/cli.mjs');
  const host = [tsx, 'watch', '--clear-screen=false', 'electron/loopback/index.ts', '--no-open', ...args];
  const child = spawn(process.execPath, host, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  let address;
  child.stdout.on('data', (chunk) => {
    const text = chunk.toString();
    process.stdout.write(text.replace(/^Stillroom is at .*$/m, 'The service is up.'));
    const found = /Stillroom is at (\S+)/.exec(text);
    if (found) enter(found[1]).then((entered) => (address = entered));
  });
  return { child, current: () => address };
}

/** Carries a request of the page to the service, with the cookie of the run. */
function carry(address, from, to) {
  const { origin, host, cookie } = address;
  const headers = { ...from.headers, host, cookie };
  if (from.headers.origin) headers.origin = origin;
  const sent = request(origin + from.originalUrl, { method: from.method, headers }, (answer) => {
    to.writeHead(answer.statusCode, answer.headers);
    answer.pipe(to);
  });
  sent.once('error', () => to.writeHead(503).end('The service is starting again.'));
  from.pipe(sent);
}

/** Only the page that this server serves may ask: no other site, no other name of this machine. */
function isOwnPage({ headers }, page) {
  const site = headers['sec-fetch-site'];
  const ownOrigin = headers.origin === undefined || headers.origin === page.origin;
  return (
    headers.host === page.host &&
    ownOrigin &&
    (site === undefined || site === 'same-origin' || site === 'none')
  );
}

function serviceBehindPage(current, page) {
  return {
    name: 'stillroom-service',
    configureServer(server) {
      server.middlewares.use('/api', (from, to) => {
        const address = current();
        if (!isOwnPage(from, page)) to.writeHead(403).end('This request came from another site.');
        else if (!address) to.writeHead(503).end('The service is starting.');
        else carry(address, from, to);
      });
    },
  };
}

await runScript(async () => {
  const options = { library: { type: 'string' }, demo: { type: 'boolean' }, help: { type: 'boolean' } };
  const given = readFlags(options, HELP);
  if (given.help) {
    console.log(HELP);
    return 0;
  }
  if (given.demo && given.library !== undefined) throw new Halt('Give either --demo or --library, not both.');
  await ensureDependencies();
  say('Starting the service and the page.');
  const from = process.env.INIT_CWD ?? process.cwd();
  const library = given.library === undefined ? [] : ['--library', resolve(from, given.library)];
  const service = startService(given.demo ? ['--demo'] : library);
  // Vite bundles the config, which takes its policy header from the service's sources; that is intended.
  process.env.VITE_CONFIG_NATIVE_IGNORE_WARNING = 'true';
  const { createServer } = await import('vite');
  const page = new URL('http://127.0.0.1:5173');
  const configFile = resolve(root, 'build/vite.dev.config.ts');
  const server = await createServer({ configFile, plugins: [serviceBehindPage(service.current, page)] });
  await server.listen();
  console.log(`The page is at ${page.href}`);
  const stop = () => service.child.kill('SIGTERM');
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
  const code = await new Promise((end) => service.child.once('exit', (exit) => end(exit ?? 0)));
  await server.close();
  return code;
});
