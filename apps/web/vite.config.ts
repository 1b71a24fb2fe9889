import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

const dist = fileURLToPath(new URL('dist', import.meta.url));

/** Lays a .gz beside each text of the build once, so that a small server need not press it for every phone. */
function pressed(): Plugin {
  return {
    name: 'pressed',
    closeBundle() {
      for (const name of readdirSync(dist, { recursive: true, encoding: 'utf8' }))
        if (/\.(js|css|svg|html)$/.test(name))
          writeFileSync(join(dist, `${name}.gz`), gzipSync(readFileSync(join(dist, name)), { level: 9 }));
    },
  };
}

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: 'static',
  plugins: [react(), pressed()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: ['chrome123', 'safari17.5', 'firefox120'], // the first of each that knows light-dark()
    // A page's own pieces are few and found by itself; a list of all that each page needs would come with the first script.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_, pieces, { hostType }) => (hostType === 'html' ? pieces : []),
    },
    assetsInlineLimit: 0, // the content security policy takes no data: addresses
  },
});
