import { resolve } from 'node:path';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'electron-vite';

const root = resolve(import.meta.dirname, '..');
const alias = {
  '@core': resolve(root, 'shared-core'),
  '@db': resolve(root, 'db'),
  '@service': resolve(root, 'electron/service'),
  '@renderer': resolve(root, 'renderer'),
};

interface Modules {
  getModuleInfo(id: string): { importedIds: readonly string[] } | null;
}

/** What the page loads before anything is shown: what its entry imports, and that in turn, but no lazily loaded screen. */
function reachedFrom(entry: string, modules: Modules): Set<string> {
  const reached = new Set([entry]);
  for (const id of reached)
    for (const imported of modules.getModuleInfo(id)?.importedIds ?? []) reached.add(imported);
  return reached;
}

let firstScreen: Set<string> | undefined;

export default defineConfig({
  main: {
    root,
    resolve: { alias },
    build: {
      outDir: resolve(root, 'out/main'),
      target: 'node20',
      // One file each opens far faster than their hundreds of small modules.
      externalizeDeps: {
        exclude: ['@hono/node-server', '@hono/zod-validator', 'echarts', 'hono', 'uuid', 'zod'],
      },
      rollupOptions: {
        input: {
          index: resolve(root, 'electron/main/index.ts'),
          loopback: resolve(root, 'electron/loopback/index.ts'),
          'service-process': resolve(root, 'electron/main/service-process.ts'),
          'rewrite-worker': resolve(root, 'db/library/folding/rewrite-worker.ts'),
          'reading-worker': resolve(root, 'db/library/opening/reading-worker.ts'),
          'sheets-worker': resolve(root, 'electron/service/sheets/sheets-worker.ts'),
          'exports-worker': resolve(root, 'electron/service/exports/exports-worker.ts'),
          'meeting-worker': resolve(root, 'electron/service/meeting/meeting-worker.ts'),
          'imports-worker': resolve(root, 'electron/service/imports/imports-worker.ts'),
          'emulsions-worker': resolve(root, 'electron/service/emulsions/emulsions-worker.ts'),
        },
        output: {
          format: 'es',
          entryFileNames: '[name].js',
          chunkFileNames: 'chunks/[name]-[hash].js',
          // A starting host has half as much to read; names stay, so that what goes wrong can be told from a trace.
          minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
        },
      },
    },
  },
  preload: {
    root,
    resolve: { alias },
    build: {
      outDir: resolve(root, 'out/preload'),
      // A sandboxed preload cannot be ESM and cannot import from node_modules.
      externalizeDeps: false,
      rollupOptions: {
        input: { index: resolve(root, 'electron/preload/index.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: resolve(root, 'renderer'),
    plugins: [vue()],
    resolve: { alias },
    // Workers load what they need as they need it, as the page does.
    worker: { format: 'es' },
    build: {
      outDir: resolve(root, 'out/renderer'),
      emptyOutDir: true,
      target: 'es2023',
      assetsInlineLimit: 0,
      minify: true,
      cssMinify: true,
      rollupOptions: {
        input: resolve(root, 'renderer/index.html'),
        // What the first screen needs comes in one file: two dozen small ones cost more to fetch than they hold.
        output: {
          codeSplitting: {
            groups: [
              {
                name: (id: string, modules: Modules) => {
                  firstScreen ??= reachedFrom(resolve(root, 'renderer/main.ts'), modules);
                  return firstScreen.has(id) ? 'common' : null;
                },
                includeDependenciesRecursively: false,
              },
            ],
          },
        },
      },
    },
  },
});
