import type { Command } from 'commander'
import { expect, test } from 'vitest'
import { makeProgram } from './program.js'

/** The help of a command, and the names of those below it. */
async function helpOf(path: readonly string[]): Promise<{ help: string; below: readonly string[] }> {
  const program = makeProgram()
  let help = ''
  for (const one of [program, ...program.commands]) {
    one.configureOutput({
      writeOut: (text) => {
        help += text
      },
    })
  }
  await expect(program.parseAsync([...path, '--help'], { from: 'user' })).rejects.toMatchObject({
    code: 'commander.helpDisplayed',
  })
  const called = path.reduce<Command>(
    (parent, name) => parent.commands.find((one) => one.name() === name) ?? parent,
    program,
  )
  return { help, below: called.commands.map((one) => one.name()) }
}

test('every command, at any depth, shows its help: what it takes and an example', async () => {
  const told: string[] = []
  const walk = async (path: readonly string[]): Promise<void> => {
    const { help, below } = await helpOf(path)
    const named = ['gensettle', ...path].join(' ')
    expect(help).toContain(`Usage: ${named} `)
    if (below.length === 0) expect(help, named).toContain(`\n  $ ${named}`)
    told.push(named)
    for (const name of below) await walk([...path, name])
  }
  await walk([])
  expect(told).toContain('gensettle log add hours')
  expect(told).toContain('gensettle prove insulation-test')
  expect(told).toContain('gensettle job fits')
})
