/**
 * Locking out as a list to be ticked, in its order; the ticks stay in this browser until they are taken out.
 *
 * @module
 */

import { useKept } from '../data/kept-text.js'
import { useSaid } from '../data/region.js'
import type { OfSet } from '../of-set.js'
import { PlainButton } from '../parts/index.js'
import { words } from '../words/proof.js'

export function LockOutSteps({ of, steps }: { readonly of: OfSet; readonly steps: readonly string[] }) {
  const said = useSaid()
  const [ticked, tick] = useKept<readonly number[]>(`${of.boat}.${of.set}.lock-out`, [])
  return (
    <>
      <ol className="lock-out picks">
        {steps.map((step, at) => (
          <li key={step}>
            <label>
              <input
                type="checkbox"
                checked={ticked.includes(at)}
                onChange={({ target }) =>
                  tick(target.checked ? [...ticked, at] : ticked.filter((one) => one !== at))
                }
              />
              <span>
                {at + 1}. {said(step)}
              </span>
            </label>
          </li>
        ))}
      </ol>
      <p className="gap-small screen-only">
        <PlainButton onClick={() => tick(undefined)}>{words.clearTicks}</PlainButton>
      </p>
    </>
  )
}
