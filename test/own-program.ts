/**
 * The program's own modules as plain JavaScript, for tests that start it as a process of its own.
 *
 * @module
 */

import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { transformWithOxc } from 'vite'

const root = join(import.meta.dirname, '..')

/** Writes folders of `src` as JavaScript beneath `to`, so that `to/store/store.js` can be imported there. */
export async function layOutProgram(to: string, folders: readonly string[]): Promise<void> {
  symlinkSync(join(root, 'node_modules'), join(to, 'node_modules'), 'dir')
  writeFileSync(join(to, 'package.json'), '{"type":"module"}')
  for (const folder of folders) {
    for (const file of readdirSync(join(root, 'src', folder), { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts') || file.endsWith('.test.ts')) continue
      const from = join(root, 'src', folder, file)
      const path = join(to, folder, file.replace(/\.ts$/, '.js'))
      const { code } = await transformWithOxc(readFileSync(from, 'utf8'), from, { target: 'es2023' })
      mkdirSync(dirname(path), { recursive: true })
      writeFileSync(path, code)
    }
  }
}
