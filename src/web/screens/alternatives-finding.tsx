/**
 * What is worth finding out before choosing: looks that pay, with what to do after them.
 *
 * @module
 */

import type { WorthFindingOut } from '../../alternatives/bearing.js'
import type { LookWorth } from '../../alternatives/finding-out.js'
import { sayFirst, sayLook, sayQuantity } from '../../alternatives/say-bearing.js'
import { useSaid } from '../data/region.js'
import { Behind, FigureRow, type FigureSaid, Heads, Lead, Passage, Refining } from '../parts/index.js'
import { bearing } from '../words/bearing.js'
import { sayNumber } from '../words/say.js'
import type { Bearing } from '../work/bearings.js'
import { moneyOf, type OfAnswer } from './of-answer.js'

const { finding } = bearing
const most = 6

export interface OfBearing extends OfAnswer {
  readonly bearing: Bearing
}

export function WorthFinding(of: OfBearing) {
  const { findingOut } = of.bearing
  return (
    <Passage title={finding.title} says={finding.says} className="wide">
      <HowFar bearing={of.bearing} has={findingOut !== undefined} />
      {findingOut !== undefined && <Looks {...of} findingOut={findingOut} />}
    </Passage>
  )
}

/** Why there is nothing to read yet, or that it follows; with a stop while it is worked out. */
export function HowFar({ bearing: of, has }: { readonly bearing: Bearing; readonly has: boolean }) {
  const { stage, share = 0, following, problem = '' } = of
  const says = following
    ? bearing.following
    : has
      ? undefined
      : {
          waiting: bearing.waits,
          failed: bearing.failed(problem),
          working: bearing.working,
          stopped: '',
          done: '',
        }[stage]
  return (
    <div className="small prose" aria-live="polite">
      {says}
      {!has && !following && (stage === 'working' || stage === 'stopped') && (
        <Refining
          share={share}
          state={stage === 'working' ? 'refining' : 'stopped'}
          word={bearing.word}
          onStop={of.stop}
          onGoOn={of.goOn}
        />
      )}
    </div>
  )
}

function Looks(of: OfBearing & { readonly findingOut: WorthFindingOut }) {
  const { basis, view, findingOut } = of
  const said = useSaid()
  const paying = findingOut.looks.filter(({ pays }) => pays).slice(0, most)
  const others = findingOut.looks.filter(({ pays }) => !pays).slice(0, most)
  return (
    <>
      <Lead>{said(sayFirst(basis.model, findingOut))}</Lead>
      {paying.length > 0 && <LooksTable of={of} looks={paying} />}
      <Behind name={finding.others}>
        {others.length > 0 && <LooksTable of={of} looks={others} />}
        <p className="fine gap-small">{finding.tooSmall(sayNumber(findingOut.tooSmall))}</p>
        <table className="table folds gap-small">
          <Heads list={[finding.quantity, { number: finding.atMost }, finding.how]} />
          <tbody>
            {findingOut.quantities.slice(0, most).map(({ id, worth, error, pays }) => {
              const { what, how } = sayQuantity(id)
              return (
                <FigureRow key={id} columns={3}>
                  {(row) => (
                    <>
                      <th scope="row">{said(what)}</th>
                      <td className="number" data-name={finding.atMost}>
                        {row.of('worth', {
                          says: moneyOf(view)(Math.max(0, worth)),
                          behind: () => ({
                            name: finding.knowing.name,
                            value: `${moneyOf(view)(worth)} ± ${moneyOf(view)(error)}`,
                            comesFrom: finding.knowing.from,
                            moves: finding.knowing.moves,
                          }),
                        })}
                      </td>
                      <td className="full">{pays ? said(how) : finding.none}</td>
                    </>
                  )}
                </FigureRow>
              )
            })}
          </tbody>
        </table>
      </Behind>
    </>
  )
}

function LooksTable({ of, looks }: { readonly of: OfBearing; readonly looks: readonly LookWorth[] }) {
  const said = useSaid()
  return (
    <table className="table folds gap-small">
      <Heads list={[finding.look, { number: finding.takes }, { number: finding.worth }, finding.after]} />
      <tbody>
        {looks.map((worth) => {
          const words = sayLook(of.basis.model, worth)
          const { look, takes, after } = words
          return (
            <FigureRow key={`${worth.look.check} ${worth.look.part}`} columns={4}>
              {(row) => (
                <>
                  <th scope="row">{said(look)}</th>
                  <td className="number" data-name={finding.takes}>
                    {row.of('takes', takesFigure(said(look), takes))}
                  </td>
                  <td className="number" data-name={finding.worth}>
                    {row.of('worth', worthFigure(of, { look: said(look), worth }), { bold: worth.pays })}
                  </td>
                  <td className="full">{said(after)}</td>
                </>
              )}
            </FigureRow>
          )
        })}
      </tbody>
    </table>
  )
}

function takesFigure(look: string, takes: string): FigureSaid {
  const { taking } = finding
  const value = takes.replace('about ', '')
  return {
    says: value,
    behind: () => ({ name: taking.name(look), value: takes, comesFrom: taking.from, moves: taking.moves }),
  }
}

function worthFigure(
  { view }: OfAnswer,
  { look, worth: { worth, error } }: { readonly look: string; readonly worth: LookWorth },
): FigureSaid {
  const { figure } = finding
  const money = moneyOf(view)
  return {
    says: money(Math.max(0, worth)),
    behind: () => ({
      name: figure.name(look),
      value: `${money(worth)} ± ${money(error)}`,
      comesFrom: figure.from,
      moves: figure.moves,
    }),
  }
}
