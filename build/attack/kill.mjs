// Kills a process that is editing a library, at random moments, and checks that nothing it acknowledged is lost.
// What the library says of itself is compared with what the sqlite3 program finds, and with the log as read by a
// reader that shares no code with ours.
import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readFile, readRows } from './reader.mjs';

const ROUNDS_PER_LIBRARY = 20;
/** A child dies shortly after this many edits, at most; counted, so that a busy machine tests as much as an idle one. */
const MOST_EDITS = 80;
const LONGEST_LIFE_MS = 10_000;
/** Libraries edited side by side: most of a round is waiting for the disk. */
const LANES = 2;

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

async function playRound(tools, folder, acknowledgedBefore, manner) {
  const acknowledged = Math.max(acknowledgedBefore, await editAndKill(tools.child, folder, manner));
  const wrong = [];
  const raw = readFile(folder, 'PRAGMA integrity_check');
  if (raw !== undefined && raw !== 'ok') wrong.push(`sqlite3, straight after the kill: ${raw}`);
  const rows = readRows(folder);
  for (let n = 1; rows && n <= acknowledged; n += 1)
    if (!rows.has(n)) wrong.push(`edit ${n} is neither in the file nor in the log, by the other reader`);
  const verdict = await tools.verify(folder);
  wrong.push(...verdict.wrong);
  if (verdict.last < acknowledged)
    wrong.push(`edit ${acknowledged} was acknowledged, the last there is ${verdict.last}`);
  if (verdict.last > acknowledged + 1) wrong.push(`${verdict.last - acknowledged} edits nobody acknowledged`);
  const found = readFile(
    folder,
    'PRAGMA integrity_check; SELECT count(*), max(n) FROM edit; SELECT last FROM tally',
  );
  const { last } = verdict;
  const expected = `ok\n${last}|${last || ''}\n${last}`;
  if (found !== undefined && found !== expected) wrong.push(`sqlite3 finds ${JSON.stringify(found)} instead`);
  const left = readdirSync(folder).filter((name) => name.endsWith('.part') || name === 'library.lock');
  if (left.length > 0) wrong.push(`left behind: ${left.join(', ')}`);
  return { ...verdict, wrong, checkedBySqlite: found !== undefined };
}

/** @returns the counts of so many kills */
export async function attackByKilling({ tools, base, rounds }) {
  const sums = { rounds: 0, edits: 0, replayed: 0, torn: 0, bad: 0 };
  async function runLane() {
    let folder = '';
    let last = 0;
    let played = 0;
    while (sums.rounds < rounds && sums.bad <= 5) {
      sums.rounds += 1;
      const round = sums.rounds;
      try {
        if (played % ROUNDS_PER_LIBRARY === 0) {
          folder = join(base, `killed-${round}`);
          last = 0;
          await tools.create(folder);
        }
        played += 1;
        const result = await playRound(tools, folder, last, round % 4 === 0 ? 'worker' : 'inline');
        sums.edits += result.last - last;
        last = result.last;
        sums.replayed += result.replayed;
        if (result.tornBytes > 0) sums.torn += 1;
        if (result.wrong.length > 0) throw new Error(`${result.wrong.join('; ')} (${folder})`);
      } catch (error) {
        console.error(`kill ${round}:`, error);
        sums.bad += 1;
      }
    }
  }
  await Promise.all(Array.from({ length: LANES }, runLane));
  return sums;
}
