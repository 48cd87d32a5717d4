import { expect, type Page } from '@playwright/test'
import sharp from 'sharp'
import { trialEntry } from '../trial-log.js'
import { keptEntries, putBoat, test } from './boat.js'
import { expectAccessible, expectContrast, expectNothingCutOff } from './pages.js'
import { textOfPdf, withoutSpaces } from './pdf-text.js'

const anodeJob = trialEntry(
  9,
  'quote',
  {
    job: 'anode-2026',
    amount: 120,
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: [],
    covers: { parts: [{ part: 'anode', did: 'renewed' }] },
  },
  { boat: 'petrel', from: '2026-10-05', until: '2026-10-05' },
)

/** A photograph of a phone that was held upright: wide pixels, turned by what its file tells, and where it was taken. */
async function photograph(name: string, background: string) {
  const buffer = await sharp({ create: { width: 640, height: 480, channels: 3, background } })
    .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer()
  return { name, mimeType: 'image/jpeg', buffer }
}

test('a job comes apart on a phone with two pictures and an arrow, goes on after a reload, and goes back', async ({
  page,
  served,
}) => {
  await page.route('**/*.worker-*', (route) => route.abort())
  await putBoat(served, 'petrel', [anodeJob])
  await page.setViewportSize({ width: 390, height: 844 })
  const address = `${served.address}boats/petrel/main/job-apart`
  await page.goto(address)
  await expect(page.getByText('0 of 4 steps are apart.')).toBeVisible()
  const apart = page.getByRole('button', { name: 'It is apart: write it in' })
  await expect(apart).toHaveCount(0)
  await answerStops(page)
  await expect(apart).toBeVisible()

  const slot = page.getByLabel('Picture: The set as it stands, from every side that can be reached')
  await slot.setInputFiles({ name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('a letter') })
  await expect(page.getByText('letter.jpg is not taken: it is no JPEG, PNG or WebP.')).toBeVisible()
  await slot.setInputFiles(await photograph('set.jpg', '#557799'))
  await page
    .getByLabel('Picture: The tag on the start, and the battery switch off')
    .setInputFiles(await photograph('tag.jpg', '#997755'))
  await page.getByRole('button', { name: 'Add an arrow' }).first().click()
  await page.getByRole('button', { name: /^Tip of arrow 1/ }).press('ArrowRight')
  await page.getByRole('button', { name: /^Tip of arrow 1: 52 from the left/ }).press('Shift+ArrowUp')
  await expect(
    page.getByRole('button', { name: /^Tip of arrow 1: 52 from the left, 40 from the top/ }),
  ).toBeVisible()
  await dragTail(page, { x: 0.1, y: 0.9 })
  await page.getByLabel('What arrow 1 shows').fill('earth strap')

  await page.reload()
  await expect(page.getByLabel('What arrow 1 shows')).toHaveValue('earth strap')
  await expect(
    page.getByRole('button', { name: /^Tail of arrow 1: 10 from the left, 90 from the top/ }),
  ).toBeVisible()
  await apart.click()
  await expect(page.getByText('1 of 4 steps are apart')).toBeVisible()
  const written = async (kind: string) =>
    (await keptEntries(served)).filter((entry) => entry.kind === kind).map(({ body }) => body)
  await expect
    .poll(() => written('apart-step'))
    .toMatchObject([
      {
        job: 'anode-2026',
        n: 1,
        proposed: 'made-dead',
        cleared: ['fuel-and-fire', 'unexpected-start'],
        photographs: [
          {
            shows: /^The set as it stands/,
            arrows: [{ from: { x: 0.1, y: 0.9 }, to: { x: 0.52, y: 0.4 }, label: 'earth strap' }],
          },
          { shows: /^The tag/ },
        ].map(({ shows, ...rest }) => ({ ...rest, shows: expect.stringMatching(shows) })),
      },
    ])

  await page.reload()
  await expect(page.getByText('Shut the seacock and tag it', { exact: false }).first()).toBeVisible()
  await answerStops(page)
  await page.getByRole('button', { name: 'Not on this set, or stays as it is' }).click()
  await expect(page.getByText('2 of 4 steps are apart')).toBeVisible()
  await expect.poll(async () => (await written('apart-step')).length).toBe(2)
  const before = page.getByRole('img', { name: /^The set as it stands.*arrows to earth strap$/ })
  await expect(before).toHaveCount(2)
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 900 })
    await expectAccessible(page)
    await expectNothingCutOff(page)
  }
  for (const light of ['Dark', 'Red'] as const) {
    await page.getByRole('radio', { name: light }).check({ force: true })
    await expectContrast(page)
  }
  await page.getByLabel('Picture: Now').setInputFiles(await photograph('back.jpg', '#559955'))
  await page.getByText('Torque, remark, what differs').click()
  await page.getByLabel('Otherwise than found').fill('tag left on')
  await page.getByRole('button', { name: 'It is back as it was: write it in' }).click()
  await expect
    .poll(() => written('refit-step'))
    .toMatchObject([{ job: 'anode-2026', differs: 'tag left on', photographs: [{ shows: 'Now' }] }])
  await expect(page.getByText('Everything is back.')).toBeVisible()

  const paper = textOfPdf(await page.pdf({ format: 'A4' }))
  for (const words of ['Putting back', 'from the set’s own manual', 'Unexpected start'])
    expect(paper.text).toContain(withoutSpaces(words))
  expect(paper.text).not.toContain(withoutSpaces('write it in'))
})

async function answerStops(page: Page): Promise<void> {
  const boxes = page.locator('.stop').getByRole('checkbox')
  await expect(boxes.first()).toBeVisible()
  // A stop goes when it is answered, and its boxes with it.
  while ((await boxes.count()) > 0) await boxes.and(page.locator(':not(:checked)')).first().click()
}

/** As a finger or a pointer does it. */
async function dragTail(page: Page, to: { readonly x: number; readonly y: number }): Promise<void> {
  const tail = page.getByRole('button', { name: /^Tail of arrow 1/ })
  await tail.scrollIntoViewIfNeeded()
  const picture = await page.locator('.apart-board img').first().boundingBox()
  const end = await tail.boundingBox()
  if (picture === null || end === null) throw new Error('the picture must be drawn')
  await page.mouse.move(end.x + end.width / 2, end.y + end.height / 2)
  await page.mouse.down()
  await page.mouse.move(picture.x + to.x * picture.width, picture.y + to.y * picture.height, { steps: 4 })
  await page.mouse.up()
}
