/**
 * Takes the place of the kernel's text in scripts for browsers, which fetch it as a file: see `kernel-file.ts`.
 *
 * @module
 */

export const kernelBase64 = ''
