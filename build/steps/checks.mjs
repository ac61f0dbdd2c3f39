import { node, say } from './run.mjs';

/** The static checks, which `npm run check` and `npm test` share. The import rule between layers is part of lint. */
export const checkStages = [
  {
    name: 'typecheck',
    title: 'Types (vue-tsc)',
    command: ['node_modules/vue-tsc/bin/vue-tsc.js', ['--noEmit', '-p', 'tsconfig.json']],
  },
  {
    name: 'lint',
    title: 'Lint and the import rule between layers (eslint)',
    command: ['node_modules/eslint/bin/eslint.js', ['--max-warnings', '0', '.']],
  },
  {
    name: 'format',
    title: 'Format (prettier)',
    command: ['node_modules/prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']],
  },
];

/**
 * Starts checks side by side, since none uses more than one core. Answers a function for each that waits for it, shows
 * what it wrote, and answers its exit code.
 */
export function startChecks(stages) {
  return stages.map(({ title, command: [script, args] }) => {
    const written = [];
    const ended = node(script, args, { heard: (chunk) => written.push(chunk) });
    return async () => {
      say(title);
      const code = await ended;
      process.stdout.write(Buffer.concat(written));
      return code;
    };
  });
}
