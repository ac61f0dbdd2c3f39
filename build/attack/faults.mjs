// A disk that fails at any call: errors, writes that come up short, a process that ends inside the call. The faults are
// injected below Node by a library loaded before libc; where that cannot be built, by the file system that tests use.
import { createHash } from 'node:crypto';
import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startProgram } from './program.mjs';
import { hasSqlite3, judge, readFile } from './reader.mjs';
import { ShimControl } from './shim.mjs';

const KINDS = ['EIO', 'ENOSPC', 'EDQUOT', 'EACCES', 'EROFS', 'EBUSY', 'EPERM', 'short', 'half-then', 'die'];
/** About how many calls a round makes. */
const CALLS = 240;
const TEXT_LINES = /^(maybe|attachment|backup|read-only)/;

/** What the host said: which edits, attachments and backups count. */
function acknowledgedIn(lines) {
  const named = (word) =>
    lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length + 1));
  const edits = lines.filter((line) => !TEXT_LINES.test(line)).map(Number);
  return {
    edits,
    maybe: named('maybe').map(Number),
    attachments: named('attachment'),
    backups: named('backup'),
    readOnly: lines.filter((line) => line.startsWith('read-only')),
  };
}

/** A copy of the folder as it stands, as if the process were gone. */
function standing(folder) {
  const copy = `${folder} standing`;
  cpSync(folder, copy, { recursive: true });
  const lock = join(copy, 'library.lock');
  if (existsSync(lock)) {
    const held = JSON.parse(readFileSync(lock, 'utf8'));
    writeFileSync(lock, `${JSON.stringify({ ...held, pid: 999_999_999 })}\n`);
  }
  return copy;
}

async function judgeAll(tools, folder, said, lastMayBe) {
  const maybe = lastMayBe ? said.maybe.slice(-1) : [];
  const wrong = await judge(folder, said.edits, { maybe });
  for (const sha256 of said.attachments) {
    const path = join(folder, 'attachments', sha256.slice(0, 2), sha256);
    const now = existsSync(path) && createHash('sha256').update(readFileSync(path)).digest('hex');
    if (now !== sha256) wrong.push(`attachment ${sha256} is lost`);
  }
  for (const name of hasSqlite3 ? said.backups : [])
    if ((await readFile(join(folder, 'backups'), 'PRAGMA integrity_check', name)) !== 'ok')
      wrong.push(`backup ${name} is broken`);
  const verdict = await tools.verify(folder);
  wrong.push(...verdict.wrong);
  return [...wrong, ...(await judge(folder, said.edits, { maybe }))];
}

async function playRound({ host, control }, tools, folder, fault) {
  await tools.create(folder);
  control?.arm(fault.at, fault.kind, fault.forGood);
  host.say({ do: 'try', folder, faulty: control ? undefined : fault });
  const tried = await host.until('tried');
  const calls = control?.disarm() ?? 0;
  if (tried.isGone) {
    if (fault.kind !== 'die') throw new Error(`The host ended: ${host.complaint()}`);
    return { wrong: await judgeAll(tools, folder, acknowledgedIn(tried.lines), true), died: true, calls };
  }
  // Where the disk takes nothing any more, what was written and not flushed cannot be taken back before it does.
  const wrong = await judgeAll(tools, standing(folder), acknowledgedIn(tried.lines), fault.forGood);
  host.say({ do: 'go on' });
  const wentOn = await host.until('went on');
  host.say({ do: 'close' });
  const closed = await host.until('closed');
  if (closed.isGone) throw new Error(`The host ended: ${host.complaint()}`);
  const said = acknowledgedIn([...tried.lines, ...wentOn.lines]);
  wrong.push(...said.readOnly.map((why) => `once the disk works again, ${why}`));
  wrong.push(...(await judgeAll(tools, folder, said, false)));
  return { wrong, died: false, calls };
}

function startHost(tools, base, name) {
  const control = tools.shim.path && new ShimControl(tools.shim, base, `faulty-${name}`);
  return {
    control,
    host: startProgram(tools.faultHost, { args: control ? [] : ['faulty'], env: control?.env }),
  };
}

/** @returns the counts of so many rounds, and how the faults were made */
export async function attackByFaults({ tools, base, rounds }) {
  const below = tools.shim.path !== undefined;
  const kinds = KINDS.filter((kind) => below || kind !== 'die');
  const sums = { rounds: 0, [below ? 'below Node' : 'by the faulty file system']: 0, died: 0, bad: 0 };
  async function runLane(_, lane) {
    let tried = startHost(tools, base, `${lane}`);
    let isWarm = false;
    while (sums.rounds < rounds && sums.bad <= 5) {
      sums.rounds += 1;
      const round = sums.rounds;
      const kind = kinds[round % kinds.length];
      const forGood = kind !== 'die' && Math.random() < 0.2;
      const fault = { at: 1 + Math.floor(Math.random() * CALLS), kind, forGood };
      const folder = join(base, `faults-${round}`);
      let died = true;
      try {
        if (!isWarm) await tried.host.until('warm');
        isWarm = true;
        const result = await playRound(tried, tools, folder, fault);
        died = result.died;
        if (died) sums.died += 1;
        if (below && result.calls >= fault.at) sums['below Node'] += 1;
        if (!below) sums['by the faulty file system'] += 1;
        if (result.wrong.length > 0) throw new Error(result.wrong.slice(0, 5).join('; '));
      } catch (error) {
        sums.bad += 1;
        console.error(`fault ${JSON.stringify(fault)} (${folder}):`, error);
        died = true;
      }
      if (!died) continue;
      tried.host.signal('SIGKILL');
      tried = startHost(tools, base, `${lane}-${round}`);
      isWarm = false;
    }
    tried.host.stop();
  }
  await Promise.all([0, 1].map(runLane));
  return sums;
}
