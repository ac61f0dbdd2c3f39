import { Problem } from '@core/problems/problem';
import type { Backup } from '../backups/backup-file';
import type { LockHolder } from '../lock/lock-holder';

export function missingLibrary(folder: string, title: string, newestBackup: Backup | null): Problem {
  return new Problem({
    code: 'library-missing',
    title,
    advice:
      'If it is on another disk or a shared folder, connect that and try again; if it was moved, choose its new ' +
      'place; otherwise restore a backup. No empty library was created in its stead.',
    facts: { folder, newestBackup },
  });
}

export function notALibraryFolder(title: string): Problem {
  return new Problem({
    code: 'library-not-one',
    title,
    advice:
      'Choose the folder of a library, or create a new library in an empty folder. Nothing was changed.',
  });
}

export function openInAnotherTool(companion: string): Problem {
  return new Problem({
    code: 'library-locked',
    title: 'Another database program has this library open, or did not finish with it.',
    advice: `Close that program so that ${companion} goes, then open the library again. Nothing was changed.`,
    facts: { file: companion },
  });
}

/** `facts.asItIs`: it can be opened all the same, once its maker says so. */
const AS_IT_IS = { file: 'library.sqlite', asItIs: true };

export function newerFile(inFile: number, inLog: number): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: `The library file, which holds changes up to ${inFile}, is newer than its change log, which ends at ${inLog}.`,
    advice:
      'One of the two was replaced from outside, for instance by a synchronising program that has not finished: wait ' +
      'for it, then try again. Otherwise the file can be opened as it is; file and log are first kept among the backups.',
    facts: AS_IT_IS,
  });
}

export function alteredFile(): Problem {
  return new Problem({
    code: 'library-damaged',
    title: 'The library file is not as Stillroom wrote it.',
    advice:
      'The disk may have damaged it, or another program changed it. It was left as it is. If you changed the file ' +
      'yourself, open it as it is: file and log are first kept among the backups.',
    facts: AS_IT_IS,
  });
}

/** How a damaged file is come back from: what there is to restore. */
export function wayBack(backup: Backup | undefined, backupFolder: string): string {
  return backup
    ? 'Restore its newest good backup: the damaged file is kept aside, and changes after the backup are added from the ' +
        'log where they follow on it.'
    : `No good backup of it was found in ${backupFolder}. Look for a copy of the library’s folder on another disk, or ` +
        'in what a synchronising program keeps of earlier days.';
}

export function missingLog(sequence: number): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: 'The change log beside this library, library.log, was not there.',
    advice:
      `The library is open as its file was last written, at change ${sequence}. Changes made after that were in the ` +
      'log: if you have it elsewhere, close the library, put library.log back and open it again.',
    facts: { file: 'library.log' },
  });
}

/** The lock that a stopped opener left says of more changes than there are. */
export function lostChanges(holder: LockHolder, reached: number, replayed: number): Problem {
  const { acknowledged, host, refreshed } = holder;
  const left = acknowledged - reached;
  const which = left === 1 ? `Change ${acknowledged} is` : `Changes ${reached + 1} to ${acknowledged} are`;
  return new Problem({
    code: 'library-changed-outside',
    title: `${which} missing from this library.`,
    advice:
      `They were saved on ${host}, the last at ${refreshed}, and neither library.sqlite nor library.log has them: ` +
      'one of the files was replaced by an older one or cut, for instance by a synchronising program. Nothing was ' +
      'changed. You can put the right files back and try again, or open the library without those changes.',
    facts: { file: 'library.log', goodLog: { taken: replayed, left } },
  });
}

export function backupGoesFurther(backup: Backup, reached: number): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: `A backup of this library goes further than the library itself: change ${backup.sequence}, not ${reached}.`,
    advice:
      'The library’s files may have been replaced by older ones. To have those changes, go back to that backup below; ' +
      'what is open now is backed up first.',
    facts: { backup: backup.name },
  });
}

export function olderThanHere(before: number, reached: number): Problem {
  const which = before === reached + 1 ? `Change ${before} is` : `Changes ${reached + 1} to ${before} are`;
  return new Problem({
    code: 'library-changed-outside',
    title: `${which} not in this library any more, and they were when it was last closed on this computer.`,
    advice:
      'You went back to an earlier state, or the files were replaced by older ones, for instance by a synchronising ' +
      'program. If you did not mean to, close the library here and put the newer files back: look at what that program ' +
      'has kept, or at the other computer. What is here now was left as it is.',
    facts: { before, reached },
  });
}

export function anotherThanHere(before: number): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: `This is not the state in which the library was last closed on this computer: change ${before} is another one.`,
    advice:
      'It was changed on another computer at the same time, and a synchronising program kept that one. What you saved ' +
      'here last may not be in it: look at what that program has kept under another name, and at the backups below.',
    facts: { before },
  });
}

/** Its log does not reach back far enough to tell whether it goes on from the state that was left here. */
export function changedElsewhere(before: number, reached: number): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: `This library was changed elsewhere since it was last closed on this computer: change ${reached} now, ${before} then.`,
    advice:
      'If it was changed on two computers at the same time, a synchronising program may have kept only one of them: see ' +
      'whether what you saved here last is in it. Otherwise there is nothing to do.',
    facts: { before, reached },
  });
}

/** A file that two computers changed is kept twice by a synchronising program: one of them under another name. */
export function copyBeside(name: string, end: number, reached: number): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: `In the folder of this library there is another copy of it: ${name}.`,
    advice:
      `It ends at change ${end}, this library at change ${reached}, and it holds what is not in here. It was left as it ` +
      'is. To look at it, copy the whole folder elsewhere, give the copy there the name of the file that it is a copy ' +
      'of, and open that folder. Once you need it no more, move it out of this folder.',
    facts: { file: name },
  });
}

export function busyElsewhere(): Problem {
  return new Problem({
    code: 'conflict',
    title: 'The files of this library keep changing.',
    advice: 'Another program is writing to them. Wait until it has finished, then open the library again.',
  });
}
