// Attacks libraries in every way below, and looks for changes that were acknowledged and are lost without a word.
//   node build/attack.mjs --rounds 1000 [--only kill,hosts,faults,bits,cuts,sync,requests] [--every]
// Exit code 1 on any. Rounds are of each kind; with --every, bits and cuts go through every place there is instead.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { attackByKilling } from './attack/kill.mjs';
import { attackByTwoHosts } from './attack/hosts.mjs';
import { attackByFaults } from './attack/faults.mjs';
import { hasSqlite3, judge, readTables, stopReading } from './attack/reader.mjs';
import { buildShim } from './attack/shim.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const KINDS = ['kill', 'hosts', 'faults', 'bits', 'cuts', 'sync', 'requests'];

const { values: given } = parseArgs({
  options: {
    rounds: { type: 'string', default: '40' },
    only: { type: 'string', default: KINDS.join(',') },
    every: { type: 'boolean', default: false },
  },
});
const rounds = Number(given.rounds);
const kinds = given.only.split(',');
if (!Number.isInteger(rounds) || rounds < 1 || kinds.some((kind) => !KINDS.includes(kind))) {
  console.error(`Say how many rounds: node build/attack.mjs --rounds 1000 [--only ${KINDS.join(',')}]`);
  process.exit(1);
}

/** Builds the attacked programs into a folder below node_modules, where they find sql.js. */
async function buildPrograms() {
  const { build } = await import('vite');
  // Of this run alone: others may be going on.
  const out = join(ROOT, `node_modules/.cache/stillroom-attack-${process.pid}`);
  mkdirSync(out, { recursive: true });
  const from = (name) => join(ROOT, 'tests/durability/attack', `${name}.ts`);
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    resolve: {
      alias: {
        '@core': join(ROOT, 'shared-core'),
        '@db': join(ROOT, 'db'),
        '@service': join(ROOT, 'electron/service'),
      },
    },
    build: {
      ssr: true,
      outDir: out,
      emptyOutDir: true,
      target: 'node20',
      rollupOptions: {
        input: {
          child: from('child'),
          host: from('host'),
          'fault-host': from('fault-host'),
          verify: from('verify'),
          decay: from('decay'),
          sync: from('sync'),
          requests: from('requests'),
          'rewrite-worker': join(ROOT, 'db/library/folding/rewrite-worker.ts'),
        },
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  });
  return out;
}

const out = await buildPrograms();
const load = (name) => import(pathToFileURL(join(out, `${name}.js`)).href);
const base = mkdtempSync(join(tmpdir(), 'stillroom-attack-'));
const tools = {
  child: join(out, 'child.js'),
  host: join(out, 'host.js'),
  faultHost: join(out, 'fault-host.js'),
  shim: buildShim(base),
  ...(await load('verify')),
};
const decay = await load('decay');
const { synchronise } = await load('sync');

const told = async (damage, name) => {
  const damaging = { rounds, every: given.every, judge };
  const { silent, ...counts } = await damage(join(base, name), damaging);
  for (const what of silent.slice(0, 10)) console.error(`${name}, in silence: ${what}`);
  return { ...counts, bad: silent.length };
};
const attacks = {
  kill: () => attackByKilling({ tools, base, rounds }),
  hosts: () => attackByTwoHosts({ tools, base, rounds }),
  faults: () => attackByFaults({ tools, base, rounds }),
  bits: () => told(decay.flipBits, 'bits'),
  cuts: () => told(decay.cutShort, 'cuts'),
  sync: () => told(synchronise, 'sync'),
  requests: async () => {
    const { sendMalformed } = await load('requests');
    return told(
      (folder) =>
        sendMalformed(folder, { rounds: 10 * rounds, readTables: hasSqlite3 ? readTables : undefined }),
      'requests',
    );
  },
};

if (tools.shim.why)
  console.log(
    `!! SKIPPED: errors below Node (${tools.shim.why}); the disk fails in the file system of the tests. !!`,
  );
let bad = 0;
for (const kind of kinds) {
  const started = Date.now();
  const counts = await attacks[kind]();
  bad += counts.bad;
  const said = Object.entries(counts).map(([what, count]) => `${count} ${what}`);
  console.log(`${kind}: ${said.join(', ')} (${((Date.now() - started) / 1000).toFixed(0)} s)`);
}
stopReading();
rmSync(out, { recursive: true, force: true });
if (!hasSqlite3)
  console.log(
    '!! SKIPPED: the sqlite3 program is not installed, so only Stillroom itself looked at the files. !!',
  );
if (bad === 0) rmSync(base, { recursive: true, force: true });
else console.error(`The libraries are kept in ${base}`);
process.exit(bad === 0 ? 0 : 1);
