import { availableParallelism } from 'node:os';
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
    // One less than there are, left to itself: half of a machine of two.
    maxWorkers: Math.max(2, availableParallelism()),
    testTimeout: 180_000,
    hookTimeout: 60_000,
    // Limits end what hangs; they do not time anything: a machine busy with other work takes far longer than a second.
    expect: { poll: { timeout: 60_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'computing',
          include: ['tests/{unit,reference,property}/**/*.test.ts'],
          // Loading the rooms anew for each file cost more than all of its tests.
          pool: 'threads',
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          // Kills processes, fills disks and stands in for Electron: each file has a process of its own.
          name: 'machine',
          include: ['tests/{durability,shell}/**/*.test.ts'],
          pool: 'forks',
        },
      },
    ],
  },
});
