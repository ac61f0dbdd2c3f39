// Two processes on one folder that edit at once: the second asks to take over, or has a clock that is wrong.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { readRows } from './reader.mjs';

const LIMIT_MS = 60_000;

/** Runs a host until it has been told to stop; answers which edits it acknowledged and whether it was read-only. */
function runHost(program, args) {
  const host = spawn(process.execPath, [program, ...args], { stdio: ['pipe', 'pipe', 'inherit'] });
  let said = '';
  let hears = () => undefined;
  const isReady = new Promise((done) => {
    hears = () => said.includes('ready') && done();
  });
  host.stdout.on('data', (bytes) => {
    said += bytes;
    hears();
  });
  const timer = setTimeout(() => host.kill('SIGKILL'), LIMIT_MS);
  const ended = new Promise((done) => {
    host.on('close', (code) => {
      clearTimeout(timer);
      const lines = said.slice(0, said.lastIndexOf('\n') + 1).split('\n');
      done({
        code,
        edits: lines.filter((line) => /^\d+$/.test(line)).map(Number),
        readOnly: said.includes('read-only'),
      });
    });
  });
  return { isReady, ended, stop: () => host.stdin.end() };
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

/** @returns the counts of so many meetings of two hosts; every other one takes over, the rest have clocks apart */
export async function attackByTwoHosts({ tools, base, rounds }) {
  const sums = { rounds: 0, edits: 0, takenOver: 0, keptOut: 0, bad: 0 };
  while (sums.rounds < rounds && sums.bad <= 5) {
    sums.rounds += 1;
    const folder = join(base, `hosts-${sums.rounds}`);
    await tools.create(folder);
    const takes = sums.rounds % 2 === 0;
    const first = runHost(tools.host, [folder, '1', 'open', '0']);
    await first.isReady;
    const minutes = String(Math.round((Math.random() - 0.5) * 240));
    const second = runHost(tools.host, [folder, '2', takes ? 'take-over' : 'open', minutes]);
    await second.isReady;
    await pause(Math.random() * 60);
    first.stop();
    second.stop();
    const [one, two] = await Promise.all([first.ended, second.ended]);
    const wrong = [];
    if (one.code !== 0 || two.code !== 0) wrong.push(`a host ended with ${one.code}, ${two.code}`);
    if (!takes && !two.readOnly) wrong.push('the second host came in unasked');
    const rows = readRows(folder);
    for (const n of [...one.edits, ...two.edits]) if (rows && !rows.has(n)) wrong.push(`edit ${n} is lost`);
    if (rows && rows.size > one.edits.length + two.edits.length + 1)
      wrong.push('edits that nobody acknowledged');
    sums.edits += one.edits.length + two.edits.length;
    if (takes) sums.takenOver += 1;
    else sums.keptOut += 1;
    if (wrong.length > 0) {
      sums.bad += 1;
      console.error(`two hosts ${sums.rounds}: ${wrong.slice(0, 5).join('; ')} (${folder})`);
    }
  }
  return sums;
}
