/**
 * The bytes of one member of an archive, a piece at a time.
 *
 * @module
 */

import type { FileHandle } from 'node:fs/promises'
import { Inflate } from 'fflate'
import type { Problem } from '../logbook/problems.js'
import type { Member } from './archive-directory.js'

/** So much is read at once. A deflated piece can grow a thousandfold, so those are smaller. [bytes] */
const storedPiece = 1 << 18
const deflatedPiece = 1 << 12

/**
 * Hands the unpacked bytes of a member on, piece by piece, never more than the directory promised. A piece is good only until the
 * next one comes.
 *
 * @returns what is wrong with it, or undefined.
 */
export async function streamMember(
  file: FileHandle,
  member: Member,
  onPiece: (piece: Uint8Array) => void,
): Promise<Problem | undefined> {
  let unpacked = 0
  const problem = (found: string): Problem => ({
    code: 'broken-member',
    path: member.name,
    found,
    allowed: `${member.size} bytes as packed`,
  })
  const buffer = Buffer.alloc(
    Math.min(member.deflated ? deflatedPiece : storedPiece, Math.max(member.packed, 1)),
  )
  let pieces: Uint8Array[] = []
  const inflate = new Inflate((piece) => {
    pieces.push(piece)
  })
  for (let done = 0; done < member.packed; ) {
    const wanted = Math.min(buffer.length, member.packed - done)
    const { bytesRead } = await file.read(buffer, 0, wanted, member.start + done)
    if (bytesRead === 0) return problem('a file that breaks off')
    done += bytesRead
    const packed = buffer.subarray(0, bytesRead)
    if (member.deflated) {
      try {
        inflate.push(packed, done === member.packed)
      } catch {
        return problem('bytes that cannot be unpacked')
      }
    } else {
      pieces = [packed]
    }
    for (const piece of pieces) {
      unpacked += piece.length
      if (unpacked > member.size) return problem('more bytes than the directory promises')
      onPiece(piece)
    }
    pieces = []
  }
  return unpacked === member.size ? undefined : problem(`${unpacked} bytes`)
}
