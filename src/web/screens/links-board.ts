/**
 * Taps on the board of leads: what is joined, and what goes out, after each.
 *
 * @module
 */

import { pointOf } from '../../proof/as-found.js'
import type { Joined, Outlet } from '../../proof/links/winding.js'

/** A lead, or the name of a line or of a lead of the regulator, that was tapped first. */
export type Tapped = { readonly lead: string } | { readonly name: string } | undefined

/** Names that can leave from a lead. */
export const lineNames = ['L', 'L1', 'L2', 'L3', 'N'] as const
export const sensingNames = ['S1', 'S2'] as const

/**
 * What a tap on a lead comes to. After a name, the name leaves from that lead, or no more if it did. After another lead, the two
 * are joined, or the one tapped last is taken out of the joint that they have in common.
 */
export function tapLead(
  joined: Joined,
  { first, lead }: { readonly first: Tapped; readonly lead: string },
): { readonly joined: Joined; readonly first: Tapped } {
  if (first === undefined) return { joined, first: { lead } }
  if ('name' in first) return { joined: withName(joined, { name: first.name, lead }), first: undefined }
  if (first.lead === lead) return { joined, first: undefined }
  const point = pointOf(first.lead, joined.joints)
  const joints = point.includes(lead)
    ? pointsOf(joined.joints).map((leads) => leads.filter((one) => one !== lead))
    : [...pointsOf(joined.joints), [first.lead, lead]]
  return { joined: { ...joined, joints: pointsOf(joints) }, first: undefined }
}

function withName(joined: Joined, outlet: Outlet): Joined {
  const which = (sensingNames as readonly string[]).includes(outlet.name) ? 'sensing' : 'lines'
  const others = joined[which].filter(({ name }) => name !== outlet.name)
  const wasHere = joined[which].some(({ name, lead }) => name === outlet.name && lead === outlet.lead)
  return { ...joined, [which]: wasHere ? others : [...others, outlet] }
}

/** Joints that share a lead as one, those of one lead left out. */
function pointsOf(joints: Joined['joints']): Joined['joints'] {
  const points = [...new Set(joints.flat())].map((lead) => pointOf(lead, joints))
  const keys = points.map((point) => point.join('-'))
  return points.filter((point, at) => point.length > 1 && keys.indexOf(keys[at]!) === at)
}
