import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

export default defineConfig({
  root: 'src/web',
  plugins: [react()],
  worker: { format: 'es' },
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2023', assetsInlineLimit: 0 },
  // While pages are being built: `gensettle serve` answers what is asked under /api.
  server: { proxy: { '/api': process.env.GENSETTLE_ADDRESS ?? 'http://127.0.0.1:4321' } },
})
