/**
 * The form of each kind of entry: what entries are judged by.
 *
 * @module
 */

import * as z from 'zod'
import { dateSchema, instantSchema, listOf, mark, nameSchema, ulidSchema, wholeWithin } from './atoms.js'
import { activityBody, freeDaysBody } from './bodies-activity.js'
import { apartStepBody, refitStepBody } from './bodies-apart.js'
import { caseBody } from './bodies-case.js'
import { decisionBody } from './bodies-decision.js'
import { linksBody } from './bodies-links.js'
import { candidateBody, habitsBody, houseRuleBody, loadBody, spaceBody } from './bodies-loads.js'
import { measuredBody } from './bodies-measured.js'
import { orderBody, particularsBody } from './bodies-order.js'
import { alternativeBody } from './bodies-plan.js'
import {
  completeBody,
  dangerSafeBody,
  findingBody,
  letdownsBody,
  noteBody,
  passedOverBody,
  photographRemovedBody,
  readingBody,
  stopBody,
} from './bodies-seen.js'
import {
  boatBody,
  fittedBody,
  hoursBody,
  meterChangedBody,
  overruleBody,
  setBody,
  termsBody,
  useBody,
} from './bodies-set.js'
import { billBody, quoteBody, workBody } from './bodies-work.js'
import { type Kind, kinds, presentVersion } from './kind-names.js'

const nothing = z.null({ error: 'null: this kind belongs to the boat, not to a set' })
const either = z.union([nameSchema, z.null()], { error: 'the name of a set, or null for the whole boat' })

/** Each kind: whether it belongs to a set, and what its body holds. */
export const kindForms = {
  boat: { set: nothing, body: boatBody },
  set: { set: nameSchema, body: setBody },
  fitted: { set: nameSchema, body: fittedBody },
  hours: { set: nameSchema, body: hoursBody },
  'meter-changed': { set: nameSchema, body: meterChangedBody },
  use: { set: nameSchema, body: useBody },
  terms: { set: nothing, body: termsBody },
  overrule: { set: either, body: overruleBody },
  finding: { set: nameSchema, body: findingBody },
  reading: { set: nameSchema, body: readingBody },
  'passed-over': { set: nameSchema, body: passedOverBody },
  stop: { set: nameSchema, body: stopBody },
  case: { set: nameSchema, body: caseBody },
  letdowns: { set: either, body: letdownsBody },
  complete: { set: either, body: completeBody },
  'danger-safe': { set: either, body: dangerSafeBody },
  work: { set: nameSchema, body: workBody },
  quote: { set: either, body: quoteBody },
  bill: { set: either, body: billBody },
  particulars: { set: nameSchema, body: particularsBody },
  order: { set: nameSchema, body: orderBody },
  activity: { set: nameSchema, body: activityBody },
  'free-days': { set: nothing, body: freeDaysBody },
  alternative: { set: nameSchema, body: alternativeBody },
  links: { set: nameSchema, body: linksBody },
  'apart-step': { set: nameSchema, body: apartStepBody },
  'refit-step': { set: nameSchema, body: refitStepBody },
  load: { set: nothing, body: loadBody },
  'house-rule': { set: nothing, body: houseRuleBody },
  habits: { set: nameSchema, body: habitsBody },
  space: { set: nameSchema, body: spaceBody },
  candidate: { set: nameSchema, body: candidateBody },
  measured: { set: nameSchema, body: measuredBody },
  decision: { set: either, body: decisionBody },
  note: { set: either, body: noteBody },
  'photograph-removed': { set: nothing, body: photographRemovedBody },
} as const satisfies Readonly<Record<Kind, { readonly set: z.ZodType; readonly body: z.ZodType }>>

/** The fields that entries of every kind have. */
const envelope = {
  version: z.literal(presentVersion, { error: `${presentVersion}` }),
  id: ulidSchema,
  boat: nameSchema,
  from: dateSchema,
  until: dateSchema,
  noted: instantSchema,
  device: nameSchema,
  n: wholeWithin(1, 1_000_000_000),
  corrects: listOf(ulidSchema, 0, 20),
  voids: mark.optional(),
}

/** The form of entries of one kind. */
function formOf<K extends Kind>(kind: K) {
  const { set, body } = kindForms[kind]
  return z.strictObject({ ...envelope, kind: z.literal(kind), set, body })
}

/** The form of an entry, kind by kind. */
export const forms = Object.fromEntries(kinds.map((kind) => [kind, formOf(kind)])) as unknown as {
  readonly [K in Kind]: ReturnType<typeof formOf<K>>
}

/** For an entry whose kind is none of ours: what can be said of it all the same. */
export const formOfUnknownKind = z.strictObject({
  ...envelope,
  kind: z.enum(kinds, { error: `one of: ${kinds.join(', ')}` }),
  set: either,
  body: z.unknown(),
})
