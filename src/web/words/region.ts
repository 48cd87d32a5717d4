/**
 * Words that follow a boat's region: the program is written in British ones, and this is the one place that knows others.
 *
 * @module
 */

import type { Body } from '../../logbook/kinds.js'

/** Whose words. */
export type Region = NonNullable<Body<'boat'>['words']>

/** Terms of wiring, tools and fuels, and what they are called in America. The first that fits holds. */
const american: readonly (readonly [RegExp, string])[] = [
  [/\bearth leakage\b/gi, 'ground fault'],
  [/\bearthing\b/g, 'grounding'],
  [/\bEarthing\b/g, 'Grounding'],
  [/\bearthed\b/g, 'grounded'],
  [/\bEarthed\b/g, 'Grounded'],
  [/\bearths?\b/g, 'ground'],
  [/\bEarths?\b/g, 'Ground'],
  [/\bRCDs?\b/g, 'GFCI or ELCI'],
  [/\b([Rr])esidual-current device\b/g, '$1esidual-current device (GFCI or ELCI)'],
  [/\bshore lead\b/g, 'shore cord'],
  [/\bspanner/g, 'wrench'],
  [/\btorch\b/g, 'flashlight'],
  [/\bpetrol\b/g, 'gasoline'],
  [/\bPetrol\b/g, 'Gasoline'],
  [/\b([Ll])itre/g, '$1iter'],
  [/\b([Mm])etre/g, '$1eter'],
]

/** A sentence in the words of a region. */
export function inRegion(sentence: string, region: Region | undefined): string {
  if (region !== 'american') return sentence
  return american.reduce((said, [term, other]) => said.replace(term, other), sentence)
}
