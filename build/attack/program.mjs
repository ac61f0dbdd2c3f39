// A program that is asked for one thing after another: a line of JSON in, lines out, until the line `done`.
import { spawn } from 'node:child_process';

/** Far longer than anything takes, on a busy machine too. */
const LIMIT_MS = 600_000;

/** @returns a process that is started once and asked many times */
export function startProgram(path, { args = [], env = {} } = {}) {
  const child = spawn(process.execPath, [path, ...args], {
    stdio: ['pipe', 'pipe', 'pipe'],
    env: { ...process.env, ...env },
  });
  let heard = '';
  let complaint = '';
  let isGone = false;
  let tell = () => undefined;
  child.stdout.on('data', (bytes) => {
    heard += bytes;
    tell();
  });
  child.stderr.on('data', (bytes) => (complaint += bytes));
  child.stdin.on('error', () => undefined);
  const ended = new Promise((done) => {
    child.on('close', (code, signal) => {
      isGone = true;
      tell();
      done(signal ?? code);
    });
  });

  /** Waits until it has said a line that is `word`; false when it is gone instead. Answers the lines before. */
  async function until(word) {
    const end = () => (heard.startsWith(`${word}\n`) ? 0 : heard.indexOf(`\n${word}\n`) + 1 || -1);
    const deadline = Date.now() + LIMIT_MS;
    while (end() < 0 && !isGone) {
      await new Promise((done) => {
        const timer = setTimeout(done, LIMIT_MS);
        tell = () => (clearTimeout(timer), done());
      });
      if (Date.now() > deadline) throw new Error(`“${word}” did not come. ${complaint}`);
    }
    const at = end();
    const lines = heard
      .slice(0, at < 0 ? heard.lastIndexOf('\n') + 1 : at)
      .split('\n')
      .slice(0, -1);
    heard = at < 0 ? '' : heard.slice(at + word.length + 1);
    return { lines, isGone: at < 0 };
  }

  return {
    pid: child.pid,
    until,
    ended,
    complaint: () => complaint,
    heard: () => heard,
    say: (what) => child.stdin.write(`${JSON.stringify(what)}\n`),
    signal: (name) => child.kill(name),
    stop: () => child.stdin.end(),
  };
}

export const pause = (ms) => new Promise((done) => setTimeout(done, ms));
