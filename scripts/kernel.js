// `npm run kernel`: compiles the simulator's kernel to WebAssembly and writes it down, as text and as it is; `npm test` compares.
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

/** The kernel made from the sources as they are now: `kernel.wasm`, and the text of `kernel-bytes.ts`. */
export async function compileKernel() {
  const bytes = await compileAssembly(join(alternatives, 'kernel', 'index.ts'))
  const lines = Buffer.from(bytes)
    .toString('base64')
    .match(/.{1,100}/g)
    .map((line) => `  '${line}',`)
  const text = `// Made from kernel/*.ts by \`npm run kernel\`: do not edit.

/** The simulator's kernel, WebAssembly in base 64. */
export const kernelBase64 = [
${lines.join('\n')}
].join('')
`
  return { bytes, text }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { bytes, text } = await compileKernel()
  writeFileSync(join(alternatives, 'kernel.wasm'), bytes)
  writeFileSync(join(alternatives, 'kernel-bytes.ts'), text)
}
