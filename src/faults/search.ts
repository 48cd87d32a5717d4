/**
 * Symptoms by the words that people use.
 *
 * @module
 */

import type { Symptom } from '../catalogue/fault-schema.js'

/** Words that say nothing of a symptom. */
const empty = new Set(
  'a an and at but comes does from has have in is it its my not of off on or out our so than that the then there to up very when while will with'.split(
    ' ',
  ),
)

/**
 * The symptoms that fit what was typed, the best first; all of them, in their order, where nothing was typed.
 *
 * A word fits one that begins alike, the shorter at least three letters. A symptom scores for each word typed: 3 for its own
 * name, 2 for how people say it; a whole saying typed as it stands scores 4 more.
 */
export function findSymptoms(symptoms: readonly Symptom[], typed: string): Symptom[] {
  const wanted = wordsOf(typed)
  if (wanted.length === 0) return [...symptoms]
  const phrase = wanted.join(' ')
  return symptoms
    .map((symptom, at) => {
      const name = wordsOf(symptom.name)
      const said = symptom.words.map(wordsOf)
      const ofWords = wanted.reduce((sum, word) => {
        if (name.some((one) => alike(one, word))) return sum + 3
        return sum + (said.some((saying) => saying.some((one) => alike(one, word))) ? 2 : 0)
      }, 0)
      const whole = said.some((saying) => saying.join(' ') === phrase) ? 4 : 0
      return { symptom, score: ofWords + whole, at }
    })
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score || a.at - b.at)
    .map(({ symptom }) => symptom)
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '' && !empty.has(word))
}

function alike(one: string, other: string): boolean {
  const [short, long] = one.length < other.length ? [one, other] : [other, one]
  if (short === long) return true
  const stem = short.length > 4 ? short.slice(0, -1) : short
  return stem.length >= 3 && long.startsWith(stem)
}
