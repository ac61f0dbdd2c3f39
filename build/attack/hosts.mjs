// Two processes on one folder that edit at once. The second asks to take over, or has a clock that is wrong; the first
// is stopped in the midst of it and goes on later, has its folder renamed, goes back to a backup, or takes it back.
import { readdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { pause, startProgram } from './program.mjs';
import { hasSqlite3, judge, readEdits } from './reader.mjs';
import { ShimControl } from './shim.mjs';

const textNumber = (n) => n % 50;
/** How the two meet, in turn. */
const MEETINGS = {
  clocks: { second: { minutes: true } },
  takeOver: { second: { takeOver: true } },
  stopped: { second: { takeOver: true }, stops: 'at any moment' },
  jumps: { first: { jumps: true }, second: { takeOver: true, jumps: true } },
  stoppedInCall: { second: { takeOver: true }, stops: 'in a call' },
  moved: { second: { takeOver: true }, moves: true },
  restored: { first: { restores: true }, second: { takeOver: true, restores: true } },
  tookBack: { first: { stubborn: 2 }, second: { takeOver: true, stubborn: 2 } },
};

async function openIn(host, asked) {
  host.say({ do: 'open', ...asked });
  const { lines, isGone } = await host.until('opened');
  if (isGone) throw new Error(`A host ended: ${host.complaint()}`);
  return lines;
}

async function stopIn(host) {
  host.say({ do: 'stop' });
  const { lines, isGone } = await host.until('closed');
  if (isGone) throw new Error(`A host ended: ${host.complaint()}`);
  return lines;
}

/** Stops the first host: at a random moment, or inside a call to the disk. */
async function halt(first, how, control) {
  if (how === 'in a call' && control) {
    control.arm(1 + Math.floor(Math.random() * 60), 'stop');
    for (let waited = 0; waited < 400 && !control.wasMet; waited += 2) await pause(2);
    // Where it never came to so many calls.
    if (!control.wasMet) first.signal('SIGSTOP');
  } else first.signal('SIGSTOP');
}

/** What going back to a backup took out is in the backup that was made of it just before. */
async function inBackups(folder) {
  const backups = join(folder, 'backups');
  const found = new Set();
  for (const name of readdirSync(backups).filter((each) => each.endsWith('.sqlite')))
    for (const n of await readEdits(backups, textNumber, name)) found.add(n);
  return found;
}

async function meet({ first, second, control }, folder, meeting) {
  const { stops, moves } = meeting;
  const said = await openIn(first, { folder, number: 1, ...meeting.first });
  await pause(Math.random() * 40);
  let place = folder;
  if (stops) await halt(first, stops, control);
  if (moves) renameSync(folder, (place = `${folder} moved`));
  const minutes = meeting.second.minutes ? Math.round((Math.random() - 0.5) * 240) : 0;
  said.push(...(await openIn(second, { folder: place, number: 2, ...meeting.second, minutes })));
  const readOnly = said.includes('read-only');
  await pause(Math.random() * 60);
  if (stops) {
    // Half of the time the second has closed again when the first goes on.
    const closes = Math.random() < 0.5;
    if (closes) said.push(...(await stopIn(second)));
    control?.disarm();
    first.signal('SIGCONT');
    await pause(Math.random() * 40);
    if (closes) said.push(...(await openIn(second, { folder: place, number: 3, takeOver: true })));
  }
  said.push(...(await stopIn(first)), ...(await stopIn(second)));
  return {
    place,
    readOnly,
    acknowledged: said.filter((line) => /^\d+$/.test(line)).map(Number),
    // Told as not saved when the other took the library just then: it may have got there all the same.
    maybe: said.filter((line) => line.startsWith('maybe ')).map((line) => Number(line.slice(6))),
  };
}

async function playRound(hosts, tools, folder, name) {
  await tools.create(folder);
  const { place, readOnly, acknowledged, maybe } = await meet(hosts, folder, MEETINGS[name]);
  const kept = name === 'restored' ? await inBackups(place) : new Set();
  const wrong = (await judge(place, acknowledged, { maybe, textNumber })).filter(
    (each) => !(/ is lost$/.test(each) && kept.has(Number(each.split(' ')[1]))),
  );
  if (name === 'clocks' && !readOnly) wrong.push('the second host came in unasked');
  return { wrong, edits: acknowledged.length };
}

function startHosts(tools, base, lane) {
  const control = tools.shim.path && new ShimControl(tools.shim, base, `first-${lane}`);
  return {
    first: startProgram(tools.host, { env: control?.env }),
    second: startProgram(tools.host),
    control,
  };
}

/** @returns the counts of so many meetings of two hosts */
export async function attackByTwoHosts({ tools, base, rounds }) {
  const sums = { rounds: 0, edits: 0, bad: 0 };
  const names = Object.keys(MEETINGS).filter((name) => name !== 'restored' || hasSqlite3);
  async function runLane(_, lane) {
    let hosts = startHosts(tools, base, lane);
    await Promise.all([hosts.first.until('warm'), hosts.second.until('warm')]);
    while (sums.rounds < rounds && sums.bad <= 5) {
      const name = names[sums.rounds % names.length];
      sums.rounds += 1;
      const folder = join(base, `hosts-${sums.rounds}`);
      try {
        const { wrong, edits: count } = await playRound(hosts, tools, folder, name);
        sums.edits += count;
        sums[name] = (sums[name] ?? 0) + 1;
        if (wrong.length > 0) throw new Error(`${wrong.slice(0, 5).join('; ')} (${folder})`);
      } catch (error) {
        sums.bad += 1;
        console.error(`two hosts, ${name}:`, error);
        for (const host of [hosts.first, hosts.second]) host.signal('SIGKILL');
        hosts = startHosts(tools, base, `${lane}-${sums.rounds}`);
        await Promise.all([hosts.first.until('warm'), hosts.second.until('warm')]);
      }
    }
    for (const host of [hosts.first, hosts.second]) host.stop();
    hosts.control?.close();
  }
  await Promise.all([0, 1].map(runLane));
  return sums;
}
