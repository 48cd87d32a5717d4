/**
 * The order of work of a job sheet: lock out, open from outside in, do what lies behind each way in, close in reverse.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { SheetPassage } from '../proof/shop-sheet-blocks.js'
import type { Deed } from '../register/register-types.js'
import type { EstimatedPart, JobEstimate } from './estimate.js'

/** What is asked of a part, as an order. */
export const asked: Readonly<Record<Deed, string>> = {
  renewed: 'renew',
  reconditioned: 'recondition',
  cleaned: 'clean',
  freed: 'free',
  adjusted: 'adjust',
  'topped-up': 'top up',
  patched: 'patch',
  relinked: 'link anew',
  opened: 'open and look',
  tested: 'test',
  removed: 'take out',
}

export function orderOfWork(
  { ways, parts }: Pick<JobEstimate, 'ways' | 'parts'>,
  { owed, parts: known }: Pick<Catalogue, 'owed' | 'parts'>,
): SheetPassage {
  const order = ways.map(({ id }) => id)
  const opensOf = (part: EstimatedPart) => known.find(({ id }) => id === part.part)?.access.opens ?? []
  /** A part is reached when the last of its ways is open. */
  const reachedAt = (part: EstimatedPart) => Math.max(-1, ...opensOf(part).map((id) => order.indexOf(id)))
  const deed = ({ name, did }: EstimatedPart) => `${name}: ${asked[did]}.`
  const behind = (at: number) => parts.filter((part) => reachedAt(part) === at).map(deed)
  const opening = ways.flatMap(({ name }, at) => [
    `Open: ${name}. A picture before and after.`,
    ...behind(at),
  ])
  const closing = ways.toReversed().map(({ name }) => `Close: ${name}.`)
  const steps = [
    'Every piece in hand, and held against the old one as far as it shows from outside.',
    'Pictures of all sides, of each lead and hose that will come off; a label on each.',
    ...behind(-1),
    ...opening,
    ...closing,
    'The tests below, in their order.',
  ]
  return {
    title: 'Order of work',
    says: 'Each ticked when it is done.',
    blocks: [
      { is: 'text', bold: 'Locking out first, each step ticked:', text: '' },
      { is: 'list', items: owed.lockOut.map((step, at) => `${at + 1}. ${step}`) },
      { is: 'text', bold: 'Then:', text: '' },
      { is: 'list', items: steps.map((step, at) => `${at + 1}. ${step}`) },
    ],
  }
}
