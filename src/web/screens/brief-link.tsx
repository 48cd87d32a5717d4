/**
 * The way to the decision brief.
 *
 * @module
 */

import type { OfSet } from '../of-set.js'
import { Link } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/brief.js'

export function BriefLink({ boat, set }: OfSet) {
  return (
    <p className="screen-only">
      <Link to={pathTo({ page: 'brief', boat, set })}>{words.link}</Link>
    </p>
  )
}
