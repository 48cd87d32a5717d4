import { join } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'

/** What starts the workers waits for nothing else. */
const begins = {
  name: 'begin',
  test: /comlink|web\/(work\/(begin|key)|data\/today|routes|screen-files)\.ts$/,
  priority: 2,
}
/** One file of what nearly all pages share, and one of what those that show figures share, rather than thirty crumbs. */
const shared = { name: 'shared', minShareCount: 12, priority: 1 }
const ofFigures = {
  name: 'of-figures',
  test: /src\/(web\/((data|marks|parts|work)\/|(set-line|use-route)\.|words\/(alternatives|boats|brief|figures|forecast|looking-back)\.|screens\/(alternatives-rests|behind-figures|brief-link|of-answer|sentence|stops|terms-tried)\.)|alternatives\/(sample|say|say-bearing)\.)/,
  minShareCount: 2,
}

export default defineConfig({
  root: 'src/web',
  plugins: [react(), fetchedBeforehand()],
  // In browsers the kernel is a file of its own.
  resolve: {
    alias: [
      {
        find: /^\.\/kernel-bytes\.js$/,
        replacement: join(import.meta.dirname, 'src/web/work/kernel-elsewhere.ts'),
      },
    ],
  },
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    rolldownOptions: { output: { codeSplitting: { groups: [begins, shared, ofFigures] } } },
  },
  // While pages are being built: `gensettle serve` answers what is asked under /api.
  server: { proxy: { '/api': process.env.GENSETTLE_ADDRESS ?? 'http://127.0.0.1:4321' } },
})

/** Lets the browser fetch the drawing of pages while the script that starts the workers is still on its way. */
function fetchedBeforehand(): Plugin {
  return {
    name: 'fetched-beforehand',
    transformIndexHtml: {
      order: 'post',
      handler: (html, { bundle = {} }) => {
        const page = Object.values(bundle).find((file) => file.type === 'chunk' && file.name === 'page')
        const files = page?.type === 'chunk' ? [page.fileName, ...page.imports] : []
        return files
          .filter((file) => !html.includes(file))
          .map((file) => ({
            tag: 'link',
            attrs: { rel: 'modulepreload', crossorigin: true, href: `/${file}` },
            injectTo: 'head' as const,
          }))
      },
    },
  }
}
