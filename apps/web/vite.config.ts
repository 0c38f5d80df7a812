import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** In development the API runs beside the Vite server; everything that is not the board goes to it. */
const api = process.env['API_ORIGIN'] ?? 'http://127.0.0.1:4300';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
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
