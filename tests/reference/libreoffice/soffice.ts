import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Whether LibreOffice is there; where it is not, `npm test` says so loudly (build/steps/checkers.mjs). */
export const haveLibreOffice = () => spawnSync('soffice', ['--version']).status === 0;

/**
 * Has LibreOffice convert files, with a profile of its own that is gone afterwards.
 * @param format what `--convert-to` takes; `from` what `--infilter` takes
 * @returns what it wrote, by file name
 */
export function converted(
  files: Record<string, string | Uint8Array>,
  format: string,
  from?: string,
): Map<string, Buffer> {
  const folder = mkdtempSync(join(tmpdir(), 'stillroom-soffice-'));
  try {
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`;
    const names = Object.keys(files);
    for (const name of names) writeFileSync(join(folder, name), files[name]!);
    const filter = from === undefined ? [] : [`--infilter=${from}`];
    const args = [
      profile,
      '--headless',
      ...filter,
      '--convert-to',
      format,
      '--outdir',
      join(folder, 'out'),
      ...names,
    ];
    execFileSync('soffice', args, { cwd: folder, stdio: 'pipe' });
    const out = readdirSync(join(folder, 'out'));
    return new Map(out.map((name) => [name, readFileSync(join(folder, 'out', name))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
