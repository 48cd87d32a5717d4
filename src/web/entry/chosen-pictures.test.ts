import { expect, test } from 'vitest'
import { chosenPicture } from './chosen-pictures.js'

const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70, 73, 70, 0, 1])
const heic = new TextEncoder().encode('\0\0\0\u0018ftypheix\0\0\0\0mif1heix')

test('a picture is known by its bytes, whatever the system calls it', async () => {
  const named = await chosenPicture(new File([jpeg], 'IMG_1', { type: '' }))
  expect(named).toMatchObject({ ok: true, heic: false, file: { name: 'IMG_1', type: 'image/jpeg' } })
  const phone = await chosenPicture(new File([heic], 'IMG_2.HEIC', { type: 'application/octet-stream' }))
  expect(phone).toMatchObject({ ok: true, heic: true, file: { type: 'image/heic' } })
})

test('what is none is told with its name', async () => {
  const why = async (file: File) => {
    const chosen = await chosenPicture(file)
    return chosen.ok ? 'a picture' : [chosen.name, chosen.why]
  }
  expect(await why(new File([], 'nothing.jpg', { type: 'image/jpeg' }))).toEqual(['nothing.jpg', 'empty'])
  expect(await why(new File(['a letter'], 'letter.jpg', { type: 'image/jpeg' }))).toEqual([
    'letter.jpg',
    'no-picture',
  ])
  const large = new File([jpeg, new Uint8Array(50_000_000)], 'large.jpg')
  expect(await why(large)).toEqual(['large.jpg', 'too-large'])
})
