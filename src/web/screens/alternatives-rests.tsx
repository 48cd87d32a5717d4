/**
 * What an answer rests on: entries, histories, the set's own record, and what was taken for granted.
 *
 * @module
 */

import { FigureRow, type FigureSaid, hole, Passage, Said } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { figures as said } from '../words/figures.js'
import { lowerFirst, plural, sayNumber, shortName, upperFirst } from '../words/say.js'
import { type OfBasis, sayEntries } from './behind-figures.js'
import type { OfAnswer } from './of-answer.js'

const { rests } = words
const most = 5

export function RestsOn(of: OfAnswer) {
  const { basis, view, log } = of
  const { restsOn, names, assumed, problems, model } = basis
  const parts = Object.entries(restsOn)
    .filter(([, entries]) => entries.length > 0)
    .sort((a, b) => b[1].length - a[1].length)
  const entries = [...new Set(parts.flatMap(([, ids]) => ids))]
  const { median, logSd } = model.labour.overrun
  const percent = (factor: number) => `${Math.round((factor - 1) * 100)}\u00a0%`
  const mean = percent(median * Math.exp(logSd ** 2 / 2))
  const high = percent(median * Math.exp(1.2816 * logSd))
  const overrun = (says: string): FigureSaid => ({
    says,
    behind: () => ({
      name: said.overrun.name,
      value: said.overrun.value(mean, high),
      comesFrom: said.overrun.from,
      moves: said.overrun.moves,
    }),
  })
  return (
    <Passage title={rests.title}>
      <div className="two">
        <div>
          {parts.length === 0 ? (
            <p className="small prose">{rests.catalogueOnly}</p>
          ) : (
            <Said
              className="small prose"
              text={rests.entries(hole('entries'), plural(parts.length, 'part'))}
              figures={{ entries: entriesFigure(log, { ids: entries, of: rests.ofTheSet }) }}
            />
          )}
          <table className="table gap-small">
            <tbody>
              {parts.slice(0, most).map(([part, ids]) => (
                <FigureRow key={part} columns={2}>
                  {(row) => (
                    <>
                      <th scope="row">{shortName(names.parts[part] ?? part)}</th>
                      <td className="number">
                        {row.of(
                          part,
                          entriesFigure(log, {
                            ids,
                            of: lowerFirst(shortName(names.parts[part] ?? part)),
                            says: plural(ids.length, 'entry', 'entries'),
                          }),
                        )}
                      </td>
                    </>
                  )}
                </FigureRow>
              ))}
            </tbody>
          </table>
        </div>
        <div className="small">
          <Said
            className="prose"
            text={rests.histories(hole('histories'))}
            figures={{
              histories: {
                says: rests.ofHistories(sayNumber(view.histories)),
                behind: () => ({
                  name: said.histories.name,
                  value: sayNumber(view.histories),
                  comesFrom: said.histories.from,
                  moves: said.histories.moves,
                }),
              },
            }}
          />
          <FailsTimes of={of} className="prose gap-small" />
          {basis.heard && <p className="prose gap-small">{basis.heard}</p>}
          <Said
            className="prose gap-small"
            text={rests.overrun({ mean: hole('mean'), high: hole('high') })}
            figures={{ mean: overrun(mean), high: overrun(high) }}
          />
        </div>
      </div>
      <TakenForGranted title={rests.assumed} list={assumed} />
      <TakenForGranted
        title={rests.refused}
        list={problems.map(({ path, found, allowed }) => `${path}: ${found}; allowed: ${allowed}`)}
      />
    </Passage>
  )
}

/** How many entries something rests on; opens to their numbers. */
export function entriesFigure(
  log: OfBasis['log'],
  {
    ids,
    of,
    says = sayNumber(ids.length),
  }: { readonly ids: readonly string[]; readonly of: string; readonly says?: string },
): FigureSaid {
  return {
    says,
    behind: () => ({
      name: said.entriesName(of),
      value: plural(ids.length, 'entry', 'entries'),
      comesFrom: sayEntries(log, ids),
      moves: said.entriesMove,
    }),
  }
}

/** How often this set fails, as a multiple of the catalogue's average. */
export function FailsTimes({
  of,
  className,
  more = '',
}: {
  readonly of: OfBasis
  readonly className: string
  readonly more?: string
}) {
  const { failsTimes, restsOn } = of.basis
  const times = sayNumber(failsTimes.mean, 1)
  const low = sayNumber(failsTimes.low, 1)
  const high = sayNumber(failsTimes.high, 1)
  const fails = (says: string): FigureSaid => ({
    says,
    behind: () => ({
      name: said.fails.name,
      value: said.fails.value(times, low, high),
      comesFrom: said.fails.from(sayEntries(of.log, [...new Set(Object.values(restsOn).flat())])),
      moves: said.fails.moves,
    }),
  })
  return (
    <Said
      className={className}
      text={`${rests.fails({ times: hole('times'), span: hole('span') })}${more}`}
      figures={{ times: fails(times), span: fails(`${low} to ${high}`) }}
    />
  )
}

export function TakenForGranted({
  title,
  list,
}: {
  readonly title: string
  readonly list: readonly string[]
}) {
  if (list.length === 0) return null
  return (
    <div className="small gap-small">
      <h3 className="small">{title}</h3>
      <ul className="prose">
        {list.map((line) => (
          <li key={line}>{upperFirst(line)}.</li>
        ))}
      </ul>
    </div>
  )
}
