// `npm run kernel`: compiles the simulator's kernel to WebAssembly and writes it down as text; `npm test` compares.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import asc from 'assemblyscript/asc'

const alternatives = join(import.meta.dirname, '..', 'src', 'alternatives')

/** WebAssembly from an entry file in AssemblyScript. */
export async function compileAssembly(entry) {
  let bytes
  const { error, stderr } = await asc.main(
    [
      ...[entry, '--outFile', 'kernel.wasm', '-O3', '--noAssert'],
      ...['--runtime', 'stub', '--uncheckedBehavior', 'always'],
    ],
    {
      writeFile: (name, contents) => {
        if (name === 'kernel.wasm') bytes = contents
      },
    },
  )
  if (error || bytes === undefined) throw new Error(`${entry} does not compile:\n${stderr.toString()}`)
  return bytes
}

/** The text of `kernel-bytes.ts`, made from the sources as they are now. */
export async function kernelBytesText() {
  const bytes = await compileAssembly(join(alternatives, 'kernel', 'index.ts'))
  const lines = Buffer.from(bytes)
    .toString('base64')
    .match(/.{1,100}/g)
    .map((line) => `  '${line}',`)
  return `// Made from kernel/*.ts by \`npm run kernel\`: do not edit.

/** The simulator's kernel, WebAssembly in base 64. */
export const kernelBase64 = [
${lines.join('\n')}
].join('')
`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(join(alternatives, 'kernel-bytes.ts'), await kernelBytesText())
}
