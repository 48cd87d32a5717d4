import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sha256 } from './sha-256.js'

function digestOf(...pieces: readonly Uint8Array[]): string {
  const digest = sha256()
  for (const piece of pieces) digest.take(piece)
  return digest.end()
}

const bytesOf = (text: string) => new TextEncoder().encode(text)

test.each([
  // FIPS 180-4 examples published with the standard (one block, two blocks), and of nothing; recalled
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
])('the digest of %j', (text, digest) => {
  expect(digestOf(bytesOf(text))).toBe(digest)
})

test('any bytes, cut anywhere, have the digest that Node makes of them', () => {
  fc.assert(
    fc.property(fc.array(fc.uint8Array({ maxLength: 150 }), { maxLength: 4 }), (pieces) => {
      const hash = createHash('sha256')
      for (const piece of pieces) hash.update(piece)
      expect(digestOf(...pieces)).toBe(hash.digest('hex'))
    }),
    { numRuns: 60 },
  )
})
