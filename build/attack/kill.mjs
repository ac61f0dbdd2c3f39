// Kills a process that is editing a library, at random moments, and checks that nothing it acknowledged is lost.
// What the library says of itself is compared with what the outside reader finds.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pause, startProgram } from './program.mjs';
import { judge } from './reader.mjs';

/** Libraries that one process has open when it is killed, each a round, each somewhere else in its work. */
const AT_ONCE = 5;
const KILLS_PER_LIBRARY = 10;
/** A process dies shortly after this many edits, at most; counted, so that a busy machine tests as much as an idle one. */
const MOST_EDITS = 150;

/** Lets a warm child edit for a random while, kills it, and says which edit of each library it acknowledged last. */
async function editAndKill(child, folders, manner) {
  child.say({ folders, manner });
  // One in eight dies while it is still opening the libraries.
  if (Math.random() < 0.125) await pause(Math.random() * 60);
  else {
    const target = 1 + Math.floor(Math.random() ** 2 * MOST_EDITS);
    const deadline = Date.now() + 20_000;
    while (child.heard().split('\n').length <= target && Date.now() < deadline) await pause(1);
    await pause(Math.random() * 15);
  }
  child.signal('SIGKILL');
  if ((await child.ended) !== 'SIGKILL')
    throw new Error(`The editing process ended by itself: ${child.complaint()}`);
  // A line without its end was not said to the full, so it acknowledges nothing.
  const { lines } = await child.until('never said');
  const said = lines.map((line) => line.split(' ').map(Number));
  return folders.map((_, index) => said.findLast(([place]) => place === index)?.[1] ?? 0);
}

const upTo = (n) => Array.from({ length: n }, (_, index) => index + 1);

async function judgeLibrary(tools, folder, acknowledged) {
  const wrong = await judge(folder, upTo(acknowledged), { maybe: [acknowledged + 1] });
  const verdict = await tools.verify(folder);
  wrong.push(...verdict.wrong);
  if (verdict.last < acknowledged)
    wrong.push(`edit ${acknowledged} was acknowledged, the last there is ${verdict.last}`);
  if (verdict.last > acknowledged + 1) wrong.push(`${verdict.last - acknowledged} edits nobody acknowledged`);
  wrong.push(...(await judge(folder, upTo(verdict.last))));
  const left = readdirSync(folder).filter((name) => name.endsWith('.part') || name === 'library.lock');
  if (left.length > 0) wrong.push(`left behind: ${left.join(', ')}`);
  return { ...verdict, wrong };
}

/** Kills one process, and judges all that it had open. */
async function playKill(tools, child, libraries, manner, sums) {
  const folders = libraries.map(({ folder }) => folder);
  const said = await editAndKill(child, folders, manner);
  sums.processes += 1;
  for (const [index, library] of libraries.entries()) {
    sums.rounds += 1;
    const acknowledged = Math.max(library.last, said[index]);
    const result = await judgeLibrary(tools, library.folder, acknowledged);
    sums.edits += result.last - library.last;
    library.last = result.last;
    sums.replayed += result.replayed;
    if (result.tornBytes > 0) sums.torn += 1;
    if (result.wrong.length === 0) continue;
    sums.bad += 1;
    console.error(`kill ${sums.rounds}: ${result.wrong.slice(0, 5).join('; ')} (${library.folder})`);
  }
}

/** @returns the counts of so many kills */
export async function attackByKilling({ tools, base, rounds }) {
  const sums = { rounds: 0, processes: 0, edits: 0, replayed: 0, torn: 0, bad: 0 };
  let libraries = [];
  let waiting = startProgram(tools.child);
  for (let kill = 0; sums.rounds < rounds && sums.bad <= 5; kill += 1) {
    if (kill % KILLS_PER_LIBRARY === 0)
      libraries = upTo(AT_ONCE).map((n) => ({ folder: join(base, `killed-${kill}-${n}`), last: 0 }));
    const child = waiting;
    try {
      if (kill % KILLS_PER_LIBRARY === 0) for (const { folder } of libraries) await tools.create(folder);
      await child.until('warm');
      waiting = startProgram(tools.child);
      await playKill(tools, child, libraries, kill % 4 === 0 ? 'worker' : 'inline', sums);
    } catch (error) {
      console.error(`kill ${kill}:`, error);
      sums.bad += 1;
    }
  }
  waiting.stop();
  return sums;
}
