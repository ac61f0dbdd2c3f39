import { resolve } from 'node:path';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vitest/config';

const root = resolve(import.meta.dirname, '..');

export default defineConfig({
  plugins: [vue()],
  root,
  resolve: {
    alias: {
      '@core': resolve(root, 'shared-core'),
      '@db': resolve(root, 'db'),
      '@service': resolve(root, 'electron/service'),
      '@renderer': resolve(root, 'renderer'),
      'fast-check': resolve(root, 'tests/property/fast-check.ts'),
    },
  },
  test: {
    include: ['tests/{unit,reference,property,durability,shell}/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 60_000,
    // Limits end what hangs; they do not time anything: a machine busy with other work takes far longer than a second.
    expect: { poll: { timeout: 60_000 } },
    pool: 'forks',
  },
});
