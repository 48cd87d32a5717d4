/**
 * What stands behind a part's odds: chances, the catalogue's lives with their sources, and fields to overrule them.
 *
 * @module
 */

import { useEffect, useState } from 'react'
import type { Draft } from '../../logbook/draft.js'
import { today } from '../data/today.js'
import { Overrule } from '../parts/index.js'
import { words } from '../words/forecast.js'
import { sayChance, sayNumber, upperFirst } from '../words/say.js'
import { shell } from '../words/shell.js'
import { describeFigure } from '../work/answers.js'
import type { FigureSource } from '../work/messages.js'
import type { OfForecast, PartShown } from './of-forecast.js'
import { whatWasWrong } from './terms-tried.js'

export interface PartOpenedProps {
  readonly id?: string
  readonly part: PartShown
  readonly of: OfForecast
}

export function PartOpened({ id, part, of }: PartOpenedProps) {
  const { odds, name, money } = part
  const { twenty } = words
  const modes = of.basis.model.parts.find((each) => each.id === odds.part)?.modes ?? []
  return (
    <div className="opened wide" id={id}>
      <b>{twenty.openedName(name)}</b>
      <div className="line">
        <span>{shell.figure.value}</span>
        <span>
          {upperFirst(
            twenty.value({
              three: sayChance(odds.failing[0]!),
              twelve: sayChance(odds.failing[2]!),
              twentyFour: sayChance(odds.failing[3]!),
            }),
          )}
          . {odds.defectiveNow > 0.005 && twenty.nowDefective(sayChance(odds.defectiveNow))}{' '}
          {odds.failedUnnoticedNow > 0.005 && twenty.asleep(sayChance(odds.failedUnnoticedNow))}
        </span>
      </div>
      <div className="line">
        <span>{shell.figure.moves}</span>
        <span>{twenty.moves(money(odds.cost))}</span>
      </div>
      {modes.map((mode) => (
        <ModeFigure
          key={mode.id}
          path={`parts.${odds.part}.modes.${mode.id}.scale`}
          name={of.basis.names.modes[`${odds.part}.${mode.id}`] ?? mode.id}
          of={of}
        />
      ))}
      {of.log.readOnly && (
        <div className="line">
          <span>{shell.figure.overrule}</span>
          <span className="second">{shell.figure.readOnly}</span>
        </div>
      )}
    </div>
  )
}

/** One figure of the catalogue: where it comes from, how it is held, and a field to overrule it. */
function ModeFigure({
  path,
  name,
  of,
}: {
  readonly path: string
  readonly name: string
  readonly of: OfForecast
}) {
  const { log, basis, keyOfAnswer } = of
  const [figure, setFigure] = useState<FigureSource | 'loading' | undefined>('loading')
  useEffect(() => {
    let here = true
    void describeFigure(keyOfAnswer, path).then((found) => here && setFigure(found))
    return () => {
      here = false
    }
  }, [keyOfAnswer, path])
  const { twenty } = words
  if (figure === 'loading') return <p className="fine">{twenty.loading}</p>
  if (figure === undefined) return null
  const unit = words.units[figure.unit] ?? figure.unit
  const write = async (value: number) => {
    const draft = {
      kind: 'overrule',
      boat: basis.register.boat,
      set: basis.register.set,
      from: today(),
      body: { path, value },
    } as Draft
    const written = await log.append([draft])
    return written.ok ? undefined : whatWasWrong(written.problems)
  }
  return (
    <>
      <div className="line">
        <span>{upperFirst(name)}</span>
        <span>
          <b>
            {sayNumber(figure.value)} {unit}
          </b>{' '}
          {twenty.lifeOf('').replace(': ', '')}
          {figure.catalogueValue !== figure.value &&
            `; ${twenty.catalogueValue(sayNumber(figure.catalogueValue))}`}
          <br />
          <span className="second">
            {figure.sourceTitle}, {figure.place}; {shell.held[figure.held]}
          </span>
        </span>
      </div>
      {!log.readOnly && (
        <div className="line">
          <span>{shell.figure.overrule}</span>
          <Overrule
            unit={unit}
            value={Number(figure.value.toPrecision(3))}
            readOnly={log.readOnly}
            onWrite={write}
          />
        </div>
      )}
    </>
  )
}
