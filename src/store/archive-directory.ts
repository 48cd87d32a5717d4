/**
 * The table of contents of a ZIP archive, read with distrust.
 *
 * Everything is taken from the directory at the end of the file and compared with the head before each member; an archive in which
 * the two differ, members overlap or anything stands that we never write is refused whole. After the published format
 * description of ZIP (APPNOTE, sections 4.3 and 4.4; held: recalled).
 *
 * @module
 */

import type { FileHandle } from 'node:fs/promises'
import type { Problem } from '../logbook/problems.js'

/** One file within an archive. */
export interface Member {
  readonly name: string
  readonly deflated: boolean
  /** Bytes within the archive. */
  readonly packed: number
  /** Bytes when unpacked, as the archive says. */
  readonly size: number
  /** Where its bytes begin. */
  readonly start: number
}

export interface ArchiveRules {
  readonly mostMembers: number
  readonly namePattern: RegExp
  readonly mostBytes: (name: string) => number
  readonly mostBytesTogether: number
  readonly mostRatio: number
}

export type Directory =
  | { readonly ok: true; readonly members: readonly Member[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

const endLength = 22
const directoryHeadLength = 46
const memberHeadLength = 30
const longestComment = 65_535
const largestDirectory = 4_000_000

/** Reads the directory of an archive, or everything that is wrong with it. */
export async function readDirectory(file: FileHandle, rules: ArchiveRules): Promise<Directory> {
  const { size } = await file.stat()
  const end = await findEnd(file, size)
  if (end === undefined)
    return refused(wholeFile('a file that breaks off or is no archive', 'a whole boat file'))
  const problems = problemsOfEnd(end, rules)
  if (problems.length > 0) return { ok: false, problems }
  const bytes = await readAt(file, end.directoryStart, end.directoryLength)
  const listed = listMembers(bytes, end.members)
  if (listed === undefined) return refused(wholeFile('a directory that cannot be read', 'a whole boat file'))
  problems.push(
    ...listed.flatMap((member) => problemsOfMember(member, rules)),
    ...problemsTogether(listed, rules),
  )
  if (problems.length > 0) return { ok: false, problems }
  const members: Member[] = []
  for (const member of listed) {
    const start = await startOf(file, member)
    if (start === undefined) problems.push(headsDiffer(member))
    else members.push({ ...member, deflated: member.method === 8, start })
  }
  problems.push(...overlaps(members, end.directoryStart))
  return problems.length > 0 ? { ok: false, problems } : { ok: true, members }
}

interface End {
  readonly members: number
  readonly directoryStart: number
  readonly directoryLength: number
  readonly endStart: number
  readonly onOneDisk: boolean
}

/** A member as the directory lists it. */
interface Listed {
  readonly name: string
  readonly flags: number
  readonly method: number
  readonly packed: number
  readonly size: number
  readonly headStart: number
  /** File mode of a Unix archive; 0 where none is told. */
  readonly unixMode: number
  readonly dosDirectory: boolean
}

async function findEnd(file: FileHandle, size: number): Promise<End | undefined> {
  const length = Math.min(size, endLength + longestComment)
  const bytes = await readAt(file, size - length, length)
  for (let at = length - endLength; at >= 0; at -= 1) {
    if (bytes.readUInt32LE(at) !== 0x06054b50 || at + endLength + bytes.readUInt16LE(at + 20) !== length)
      continue
    return {
      onOneDisk:
        bytes.readUInt32LE(at + 4) === 0 && bytes.readUInt16LE(at + 8) === bytes.readUInt16LE(at + 10),
      members: bytes.readUInt16LE(at + 10),
      directoryLength: bytes.readUInt32LE(at + 12),
      directoryStart: bytes.readUInt32LE(at + 16),
      endStart: size - length + at,
    }
  }
  return undefined
}

function problemsOfEnd(end: End, { mostMembers }: ArchiveRules): Problem[] {
  const problems: Problem[] = []
  if (!end.onOneDisk || end.directoryStart + end.directoryLength !== end.endStart) {
    problems.push(wholeFile('a directory that is not where the file says', 'a whole boat file'))
  }
  if (end.members > mostMembers) {
    problems.push({
      code: 'too-many-files',
      path: '',
      found: `${end.members} files`,
      allowed: `at most ${mostMembers}`,
    })
  }
  if (end.directoryLength > largestDirectory) {
    problems.push(wholeFile(`a directory of ${end.directoryLength} bytes`, `at most ${largestDirectory}`))
  }
  return problems
}

function listMembers(bytes: Buffer, count: number): readonly Listed[] | undefined {
  const members: Listed[] = []
  let at = 0
  while (at < bytes.length) {
    if (at + directoryHeadLength > bytes.length || bytes.readUInt32LE(at) !== 0x02014b50) return undefined
    const nameLength = bytes.readUInt16LE(at + 28)
    const next =
      at + directoryHeadLength + nameLength + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32)
    if (next > bytes.length) return undefined
    const writtenOnUnix = bytes.readUInt8(at + 5) === 3
    const attributes = bytes.readUInt32LE(at + 38)
    members.push({
      name: bytes.toString('latin1', at + directoryHeadLength, at + directoryHeadLength + nameLength),
      flags: bytes.readUInt16LE(at + 8),
      method: bytes.readUInt16LE(at + 10),
      packed: bytes.readUInt32LE(at + 20),
      size: bytes.readUInt32LE(at + 24),
      headStart: bytes.readUInt32LE(at + 42),
      unixMode: writtenOnUnix ? attributes >>> 16 : 0,
      dosDirectory: (attributes & 0x10) !== 0,
    })
    at = next
  }
  return members.length === count ? members : undefined
}

/** Bits 1, 2, 3 and 11: how hard it was packed, lengths told afterwards, the name in UTF-8. */
const harmlessFlags = 0b1000_0000_1110
const fileTypeMask = 0o170000
const plainFile = 0o100000

function problemsOfMember(member: Listed, rules: ArchiveRules): Problem[] {
  const path = JSON.stringify(member.name.slice(0, 120))
  if (!rules.namePattern.test(member.name)) {
    return [{ code: 'foreign-name', path, found: path, allowed: 'only the names that a boat file has' }]
  }
  const problems: Problem[] = []
  const say = (code: string, found: string, allowed: string) => problems.push({ code, path, found, allowed })
  const type = member.unixMode & fileTypeMask
  if (member.dosDirectory || (type !== 0 && type !== plainFile)) {
    say('no-plain-file', `mode ${member.unixMode.toString(8)}`, 'plain files; no links, no folders')
  }
  if ((member.flags & ~harmlessFlags) !== 0 || (member.method !== 0 && member.method !== 8)) {
    say(
      'foreign-packing',
      `method ${member.method}, flags ${member.flags}`,
      'stored or deflated, not enciphered',
    )
  }
  if (member.size > rules.mostBytes(member.name)) {
    say('too-large', `${member.size} bytes`, `at most ${rules.mostBytes(member.name)}`)
  }
  if (member.method === 0 && member.packed !== member.size) {
    say('lengths-differ', `${member.packed} bytes for ${member.size}`, 'the same length packed and unpacked')
  }
  if (member.size > rules.mostRatio * Math.max(member.packed, 1)) {
    say(
      'packed-too-tight',
      `${member.size} bytes out of ${member.packed}`,
      `at most ${rules.mostRatio} to one`,
    )
  }
  return problems
}

function problemsTogether(members: readonly Listed[], { mostBytesTogether }: ArchiveRules): Problem[] {
  const problems: Problem[] = []
  const names = new Set<string>()
  for (const { name } of members) {
    if (names.has(name)) {
      problems.push({
        code: 'name-twice',
        path: JSON.stringify(name),
        found: 'two files of that name',
        allowed: 'one',
      })
    }
    names.add(name)
  }
  const total = members.reduce((sum, { size }) => sum + size, 0)
  if (total > mostBytesTogether) {
    const allowed = `at most ${mostBytesTogether}`
    problems.push({ code: 'too-large', path: '', found: `${total} bytes unpacked`, allowed })
  }
  return problems
}

/** Where a member's bytes begin: after the head before them, which must say the same as the directory. */
async function startOf(file: FileHandle, listed: Listed): Promise<number | undefined> {
  const head = await readAt(file, listed.headStart, memberHeadLength + listed.name.length)
  const agrees =
    head.length === memberHeadLength + listed.name.length &&
    head.readUInt32LE(0) === 0x04034b50 &&
    head.readUInt16LE(8) === listed.method &&
    head.readUInt16LE(26) === listed.name.length &&
    head.toString('latin1', memberHeadLength) === listed.name
  return agrees ? listed.headStart + head.length + head.readUInt16LE(28) : undefined
}

function headsDiffer({ name }: Listed): Problem {
  const found = 'a head that differs from the directory'
  return { code: 'heads-differ', path: JSON.stringify(name), found, allowed: 'the same in both' }
}

function overlaps(members: readonly Member[], directoryStart: number): Problem[] {
  const inOrder = [...members].sort((a, b) => a.start - b.start)
  return inOrder.flatMap(({ name, start, packed }, index) => {
    const next = inOrder[index + 1]?.start ?? directoryStart
    if (start + packed <= next) return []
    const found = 'bytes that belong to what follows as well'
    return [{ code: 'members-overlap', path: JSON.stringify(name), found, allowed: 'bytes of its own' }]
  })
}

/** Bytes from a place in a file; fewer where the file ends before. */
async function readAt(file: FileHandle, position: number, length: number): Promise<Buffer> {
  const bytes = Buffer.alloc(length)
  const { bytesRead } = await file.read(bytes, 0, length, position)
  return bytes.subarray(0, bytesRead)
}

function wholeFile(found: string, allowed: string): Problem {
  return { code: 'broken-archive', path: '', found, allowed }
}

function refused(problem: Problem): Directory {
  return { ok: false, problems: [problem] }
}
