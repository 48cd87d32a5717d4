/**
 * Looking at a file that was chosen as a picture, before it leaves this machine.
 *
 * @module
 */

import { largestPhotograph, photographType } from '../../logbook/photographs.js'

export type Chosen =
  | { readonly ok: true; readonly file: File; readonly heic: boolean }
  | {
      readonly ok: false
      readonly name: string
      readonly why: 'empty' | 'too-large' | 'no-picture' | 'unreadable'
    }

/** What a file is by its bytes: the system may name its type wrongly, or not know it. */
export async function chosenPicture(file: File): Promise<Chosen> {
  const { name } = file
  if (file.size === 0) return { ok: false, name, why: 'empty' }
  if (file.size > largestPhotograph) return { ok: false, name, why: 'too-large' }
  try {
    const type = photographType(new Uint8Array(await file.slice(0, 12).arrayBuffer()))
    if (type === undefined) return { ok: false, name, why: 'no-picture' }
    const named =
      file.type === type ? file : new File([file], name, { type, lastModified: file.lastModified })
    return { ok: true, file: named, heic: type === 'image/heic' }
  } catch {
    return { ok: false, name, why: 'unreadable' }
  }
}
