/**
 * The figures of the catalogue that the owner set, each beside the catalogue's own.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import { describeFigure } from '../../catalogue/overrule.js'
import { isKind } from '../../logbook/kinds.js'
import { registerOf } from '../../register/register.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { type Boat, useCatalogue } from '../data/boat.js'
import { today } from '../data/today.js'
import { write } from '../data/write.js'
import { saidProblem } from '../entry/problems.js'
import { draftTakingBack } from '../entry/take-back.js'
import { Heads, Passage, PlainButton, WideTable } from '../parts/index.js'
import { sayDate } from '../words/say.js'
import { settings } from '../words/settings.js'

const words = settings.overruled

export function Overruled({ boat, set }: { readonly boat: Boat; readonly set: string }) {
  const catalogue = useCatalogue()
  const [said, setSaid] = useState('')
  const { entries, id } = boat
  const overrulings = useMemo(
    () =>
      entries
        .filter((entry) => isKind(entry, 'overrule'))
        .filter((entry) => entry.set === null || entry.set === set),
    [entries, set],
  )
  const ofSet = useMemo(() => {
    if (catalogue === undefined || overrulings.length === 0) return undefined
    const register = registerOf({ entries, boat: id, set, asOf: today(), catalogue })
    return setCatalogueOf(register, catalogue).catalogue
  }, [catalogue, overrulings, entries, id, set])
  const takeBack = async (entry: (typeof overrulings)[number]) => {
    const written = await write([draftTakingBack([entry], words.takenBack)])
    setSaid(written.ok ? words.takenBack : written.problems.map((one) => saidProblem(one)).join(' '))
  }
  const number = (value: number | undefined) =>
    value?.toLocaleString('en-GB', { maximumSignificantDigits: 6 }) ?? ''
  return (
    <Passage title={words.title} says={words.says}>
      {overrulings.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <WideTable name={words.title}>
          <table className="table folds">
            <Heads
              list={[
                words.heads.figure,
                { number: words.heads.yours },
                { number: words.heads.catalogue },
                words.heads.because,
                words.heads.since,
                { unseen: words.takeBack },
              ]}
            />
            <tbody>
              {overrulings.map((entry) => {
                const figure = ofSet && describeFigure(ofSet, entry.body.path)
                const unit = figure?.unit ?? ''
                return (
                  <tr key={entry.id}>
                    <th scope="row">{sayPath(entry.body.path)}</th>
                    <td className="number" data-name={words.heads.yours}>
                      {number(entry.body.value)} {unit}
                    </td>
                    <td className="number" data-name={words.heads.catalogue}>
                      {number(figure?.catalogueValue)} {unit}
                    </td>
                    <td className="full">{entry.body.because}</td>
                    <td className="whole" data-name={words.heads.since}>
                      {sayDate(entry.from)}
                    </td>
                    <td>
                      {!boat.readOnly && (
                        <PlainButton onClick={() => void takeBack(entry)}>{words.takeBack}</PlainButton>
                      )}
                    </td>
                  </tr>
                )
              })}
            </tbody>
          </table>
        </WideTable>
      )}
      <div aria-live="polite">{said && <p className="written">{said}</p>}</div>
    </Passage>
  )
}

function sayPath(path: string): string {
  const said = path
    .replace(/^parts\./, '')
    .replaceAll('.', ', ')
    .replaceAll('-', ' ')
  return said.charAt(0).toUpperCase() + said.slice(1)
}
