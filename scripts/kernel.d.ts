/** WebAssembly from an entry file in AssemblyScript. */
export function compileAssembly(entry: string): Promise<Uint8Array>
/** The text of `kernel-bytes.ts`, made from the sources as they are now. */
export function kernelBytesText(): Promise<string>
