/** WebAssembly from an entry file in AssemblyScript. */
export function compileAssembly(entry: string): Promise<Uint8Array>
/** The kernel made from the sources as they are now: `kernel.wasm`, and the text of `kernel-bytes.ts`. */
export function compileKernel(): Promise<{ readonly bytes: Uint8Array; readonly text: string }>
