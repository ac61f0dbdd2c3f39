import { node } from './run.mjs';

/** The static checks, which `npm run check` and `npm test` share. The import rule between layers is part of lint. */
export const checkStages = [
  {
    name: 'typecheck',
    title: 'Types (vue-tsc)',
    run: () => node('node_modules/vue-tsc/bin/vue-tsc.js', ['--noEmit', '-p', 'tsconfig.json']),
  },
  {
    name: 'lint',
    title: 'Lint and the import rule between layers (eslint)',
    run: () => node('node_modules/eslint/bin/eslint.js', ['--max-warnings', '0', '.']),
  },
  {
    name: 'format',
    title: 'Format (prettier)',
    run: () => node('node_modules/prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']),
  },
];
