// Kills a process that is editing a library, at random moments, and checks that nothing it acknowledged is lost.
//   node build/kill.mjs --rounds 1000
// Exit code 1 on any loss. What the library says of itself is compared with what the sqlite3 program finds.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';

const ROOT = resolve(import.meta.dirname, '..');
const ROUNDS_PER_LIBRARY = 20;
/** A child dies shortly after this many edits, at most; counted, so that a busy machine tests as much as an idle one. */
const MOST_EDITS = 80;
const LONGEST_LIFE_MS = 10_000;
/** Libraries edited side by side: most of a round is waiting for the disk. */
const LANES = 2;

const { values: given } = parseArgs({ options: { rounds: { type: 'string', default: '40' } } });
const rounds = Number(given.rounds);
if (!Number.isInteger(rounds) || rounds < 1) {
  console.error('Say how many rounds: node build/kill.mjs --rounds 1000');
  process.exit(1);
}

/** Builds the child, the rewrite worker and the verifier into a folder below node_modules, where they find sql.js. */
async function buildChild() {
  const { build } = await import('vite');
  const out = join(ROOT, 'node_modules/.cache/stillroom-kill');
  mkdirSync(out, { recursive: true });
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    resolve: { alias: { '@core': join(ROOT, 'shared-core'), '@db': join(ROOT, 'db') } },
    build: {
      ssr: true,
      outDir: out,
      emptyOutDir: true,
      target: 'node20',
      rollupOptions: {
        input: {
          child: join(ROOT, 'tests/durability/kill/child.ts'),
          verify: join(ROOT, 'tests/durability/kill/verify.ts'),
          'rewrite-worker': join(ROOT, 'db/library/folding/rewrite-worker.ts'),
        },
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  });
  return out;
}

/** Lets a child edit for a random while, kills it, and says which edit it acknowledged last. */
function editAndKill(child, folder, manner) {
  return new Promise((done, fail) => {
    const editing = spawn(process.execPath, [child, folder, manner], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let complaint = '';
    let killed = false;
    const kill = () => {
      killed = true;
      editing.kill('SIGKILL');
    };
    // One in eight dies while it is still opening the library.
    let timer = setTimeout(kill, Math.random() < 0.125 ? 40 + Math.random() * 250 : LONGEST_LIFE_MS);
    let linesToGo = 1 + Math.floor(Math.random() ** 2 * MOST_EDITS);
    editing.stdout.on('data', (bytes) => {
      said += bytes;
      linesToGo -= bytes.toString().split('\n').length - 1;
      if (linesToGo > 0) return;
      linesToGo = Infinity;
      clearTimeout(timer);
      timer = setTimeout(kill, Math.random() * 15);
    });
    editing.stderr.on('data', (bytes) => (complaint += bytes));
    editing.on('error', fail);
    editing.on('close', () => {
      clearTimeout(timer);
      if (!killed) fail(new Error(`The editing process ended by itself: ${complaint}`));
      // A line without its end was not said to the full, so it acknowledges nothing.
      const whole = said.slice(0, said.lastIndexOf('\n') + 1).trim();
      done(Number(whole.split('\n').at(-1)) || 0);
    });
  });
}

/** What the sqlite3 program says about the file; undefined where that program is not installed. */
function askSqlite(folder, sql) {
  const asked = spawnSync('sqlite3', ['-readonly', join(folder, 'library.sqlite'), sql], {
    encoding: 'utf8',
  });
  if (asked.error?.code === 'ENOENT') return undefined;
  return asked.status === 0 ? asked.stdout.trim() : `failed: ${asked.stderr.trim()}`;
}

async function playRound(tools, folder, acknowledgedBefore, manner) {
  const acknowledged = Math.max(acknowledgedBefore, await editAndKill(tools.child, folder, manner));
  const wrong = [];
  const raw = askSqlite(folder, 'PRAGMA quick_check');
  if (raw !== undefined && raw !== 'ok') wrong.push(`sqlite3, straight after the kill: ${raw}`);
  const verdict = await tools.verify(folder);
  wrong.push(...verdict.wrong);
  if (verdict.last < acknowledged)
    wrong.push(`edit ${acknowledged} was acknowledged, the last there is ${verdict.last}`);
  if (verdict.last > acknowledged + 1) wrong.push(`${verdict.last - acknowledged} edits nobody acknowledged`);
  const found = askSqlite(
    folder,
    'PRAGMA quick_check; SELECT count(*), max(n) FROM edit; SELECT last FROM tally',
  );
  const { last } = verdict;
  const expected = `ok\n${last}|${last || ''}\n${last}`;
  if (found !== undefined && found !== expected) wrong.push(`sqlite3 finds ${JSON.stringify(found)} instead`);
  const left = readdirSync(folder).filter((name) => name.endsWith('.part') || name === 'library.lock');
  if (left.length > 0) wrong.push(`left behind: ${left.join(', ')}`);
  return { ...verdict, wrong, checkedBySqlite: found !== undefined };
}

const started = Date.now();
const out = await buildChild();
const { create, verify } = await import(pathToFileURL(join(out, 'verify.js')).href);
const tools = { child: join(out, 'child.js'), verify };
const base = mkdtempSync(join(tmpdir(), 'stillroom-kill-'));
const sums = { rounds: 0, edits: 0, replayed: 0, torn: 0, bad: 0, checkedBySqlite: true };

/** Takes rounds until none are left, or until losses are plain enough. */
async function runLane() {
  let folder = '';
  let last = 0;
  let played = 0;
  while (sums.rounds < rounds && sums.bad <= 5) {
    sums.rounds += 1;
    const round = sums.rounds;
    try {
      if (played % ROUNDS_PER_LIBRARY === 0) {
        folder = join(base, `library-${round}`);
        last = 0;
        await create(folder);
      }
      played += 1;
      const result = await playRound(tools, folder, last, round % 4 === 0 ? 'worker' : 'inline');
      sums.edits += result.last - last;
      last = result.last;
      sums.replayed += result.replayed;
      if (result.tornBytes > 0) sums.torn += 1;
      sums.checkedBySqlite &&= result.checkedBySqlite;
      if (result.wrong.length > 0) throw new Error(`${result.wrong.join('; ')} (${folder})`);
    } catch (error) {
      console.error(`round ${round}:`, error);
      sums.bad += 1;
    }
    if (round % 50 === 0) console.log(`  ${round} of ${rounds} rounds`);
  }
}

await Promise.all(Array.from({ length: LANES }, runLane));

if (!sums.checkedBySqlite) {
  console.log(
    '!! SKIPPED: the sqlite3 program is not installed, so only Stillroom itself looked at the files. !!',
  );
}
if (sums.bad === 0) rmSync(base, { recursive: true, force: true });
else console.error(`The libraries are kept in ${base}`);
const seconds = ((Date.now() - started) / 1000).toFixed(0);
console.log(
  `kill: ${sums.rounds} rounds, ${sums.edits} edits kept, ${sums.replayed} replayed from the log, ` +
    `${sums.torn} torn records dropped, ${sums.bad} rounds with a loss (${seconds} s)`,
);
process.exit(sums.bad === 0 ? 0 : 1);
