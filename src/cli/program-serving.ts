/**
 * The commands that serve the pages, show what the demonstration boats come to, and list the boats.
 *
 * @module
 */

import type { Command } from 'commander'
import { answering, usual, withSeed } from './program-parts.js'

export function layOutServe(serve: Command): void {
  withSeed(usual(serve, { example: 'gensettle serve --data ./logbook', data: true })).action(
    async (options) => {
      process.exitCode = await (await import('./serve.js')).serve(options)
    },
  )
}

export function layOutDemo(demo: Command): void {
  withSeed(usual(demo, { example: 'gensettle demo' })).action(
    answering(async (options) => (await import('./serve.js')).demonstrate(options)),
  )
}

export function layOutBoats(boats: Command): void {
  usual(boats, { example: 'gensettle boats', data: true }).action(
    answering(async (options) => (await import('./boats.js')).listBoats(options)),
  )
}
