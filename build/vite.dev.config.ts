import { resolve } from 'node:path';
import vue from '@vitejs/plugin-vue';
import { defineConfig } from 'vite';
import { securityHeaders } from '../electron/service/security/content-policy';

const root = resolve(import.meta.dirname, '..');
const port = 5173;

/** The page served from its sources, reloading itself. `dev.mjs` adds the way to the service. */
export default defineConfig({
  root: resolve(root, 'renderer'),
  cacheDir: resolve(root, 'node_modules/.vite-dev'),
  plugins: [vue()],
  resolve: {
    alias: {
      '@core': resolve(root, 'shared-core'),
      '@renderer': resolve(root, 'renderer'),
      '@service': resolve(root, 'electron/service'),
    },
  },
  server: {
    host: '127.0.0.1',
    port,
    strictPort: true,
    cors: false,
    headers: securityHeaders({ origin: `http://127.0.0.1:${port}` }),
  },
});
