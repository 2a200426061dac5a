import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

// Names without fingerprints: the program answers with an ETag of the bytes, and CMake sees the same files each time.
export default defineConfig({
  plugins: [svelte()],
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: {
      output: {
        entryFileNames: 'assets/page.js',
        chunkFileNames: 'assets/[name].js',
        assetFileNames: 'assets/[name][extname]',
      },
    },
  },
  server: { proxy: { '/api': process.env['BEEGARTH_URL'] ?? 'http://127.0.0.1:8080' } },
});
