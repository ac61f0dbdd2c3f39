import { setTimeout as pause } from 'node:timers/promises';
import { Problem } from '@core/problems/problem';
import { Engine } from '@db/library/sql/engine';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import { z } from 'zod';
import { commands, say } from './commands';
import { killOptions, textOf } from './edits';

// One of two hosts on a folder. Opens a library when told, edits it until it is told to stop, and says each edit that
// was acknowledged. It serves many rounds, as a host that stays open does.
const command = z.discriminatedUnion('do', [
  z.object({
    do: z.literal('open'),
    folder: z.string(),
    number: z.number(),
    takeOver: z.boolean().default(false),
    /** How wrong its clock is, in minutes, and whether it jumps about from edit to edit. */
    minutes: z.number().default(0),
    jumps: z.boolean().default(false),
    /** Goes back to a backup of its own in the midst of editing. */
    restores: z.boolean().default(false),
    /** Takes the library back this many times when it was taken over. */
    stubborn: z.number().default(0),
  }),
  z.object({ do: z.literal('stop') }),
]);
type Opening = Extract<z.output<typeof command>, { do: 'open' }>;

let going = false;
let ended: Promise<void> = Promise.resolve();

function open(asked: Opening, takeOver = asked.takeOver): Promise<OpenLibrary> {
  const wrongBy = () => (asked.jumps ? (Math.random() - 0.5) * 240 : asked.minutes);
  return openLibrary(asked.folder, {
    ...killOptions,
    now: () => new Date(Date.now() + wrongBy() * 60_000),
    takeOver,
    rewriteAfterLogBytes: 20_000,
    rewriteAfterIdleMs: 1,
  });
}

function edit(library: OpenLibrary, n: number): boolean {
  try {
    library.transaction((tx) =>
      tx.run('INSERT INTO edit (n, text, half) VALUES (?, ?, ?)', n, textOf(n % 50), n / 2),
    );
    say(n);
    return true;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return false;
  }
}

async function goBack(library: OpenLibrary): Promise<void> {
  const [backup] = await library.listBackups();
  if (backup) await library.restore(backup.name);
}

async function editUntilStopped(first: OpenLibrary, asked: Opening): Promise<void> {
  let library = first;
  let again = asked.stubborn;
  if (asked.restores && !library.readOnly) await library.backUp().catch(refused);
  let wasSaved = true;
  for (let n = asked.number * 1_000_000; going; n += 1) {
    const saved = edit(library, n);
    if (wasSaved && !saved) say(`maybe ${n}`);
    wasSaved = saved;
    if (!saved && library.readOnly && again > 0) {
      again -= 1;
      await library.close();
      library = await open(asked, true);
      wasSaved = true;
    } else if (!saved) await pause(2);
    if (Math.random() < 0.05) library.rewrite().catch(refused);
    if (asked.restores && Math.random() < 0.05) await goBack(library).catch(refused);
    await pause(0);
  }
  await library.close();
}

/** What is refused with a reason may be refused; anything else is a fault, and ends the process. */
function refused(error: unknown): void {
  if (!(error instanceof Problem)) throw error;
}

(await Engine.open()).close();
say('warm');

for await (const asked of commands(command)) {
  if (asked.do === 'stop') {
    going = false;
    await ended;
    say('closed');
    continue;
  }
  const library = await open(asked);
  if (library.readOnly) say('read-only');
  going = true;
  ended = editUntilStopped(library, asked);
  say('opened');
}
process.exit(0);
