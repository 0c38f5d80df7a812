import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** In development the API runs beside the Vite server; everything that is not the board goes to it. */
const api = process.env['API_ORIGIN'] ?? 'http://127.0.0.1:4300';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react(), packed()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // A data: URL would need its own allowance in the content security policy.
    assetsInlineLimit: 0,
    target: 'es2023',
    sourcemap: false,
  },
  server: {
    proxy: Object.fromEntries(
      ['/graphql', '/imports', '/exports', '/documents', '/calendar', '/health'].map((path) => [
        path,
        { target: api, ws: true },
      ]),
    ),
  },
});

/** Each script and style once more, packed: a hangar's network is slow, and nothing is packed again for every request. */
function packed(): Plugin {
  return {
    name: 'packed',
    apply: 'build',
    // Not earlier: until they are written other plugins may still change them.
    writeBundle({ dir }, bundle) {
      for (const name of Object.keys(bundle).filter((each) => /\.(js|css)$/.test(each))) {
        const file = join(dir ?? '', name);
        writeFileSync(`${file}.gz`, gzipSync(readFileSync(file), { level: 9 }));
      }
    },
  };
}
