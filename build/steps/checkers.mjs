import { spawnSync } from 'node:child_process';

/** Programs of others that some tests hold our files against, and what tells that one is there. */
const CHECKERS = [
  { program: 'pdftotext', args: ['-v'], package: 'poppler-utils' },
  { program: 'qpdf', args: ['--version'], package: 'qpdf' },
  { program: 'sqlite3', args: ['--version'], package: 'sqlite3' },
  { program: 'python3', args: ['--version'], package: 'python3' },
  { program: 'soffice', args: ['--version'], package: 'libreoffice-calc' },
];

/** Says loudly which checkers are missing, as their tests are then skipped; answers them. */
export function tellMissingCheckers() {
  const missing = CHECKERS.filter(({ program, args }) => spawnSync(program, args).error !== undefined);
  if (missing.length > 0) {
    const programs = missing.map(({ program }) => program).join(', ');
    const packages = missing.map((checker) => checker.package).join(' ');
    console.log(
      `\n!! Not installed here: ${programs}. The tests that hold our files against them are SKIPPED.`,
    );
    console.log(`!! On Debian: apt-get install ${packages}`);
  }
  return missing;
}
