/**
 * What each offer comes to, line by line with why; figures of the catalogue in it can be set.
 *
 * @module
 */

import { describeFigure } from '../../catalogue/overrule.js'
import type { OfferLine } from '../../job/quotes-scope.js'
import { figuresOfLine, sayLine, sayWho, sayWhy } from '../../job/quotes-words.js'
import type { Draft } from '../../logbook/draft.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import { Behind, FigureRow, type FigureSaid, Heads, Overrule, Passage } from '../parts/index.js'
import { words } from '../words/job-quotes.js'
import { sayNumber, upperFirst } from '../words/say.js'
import { shell } from '../words/shell.js'
import type { AskedOffer, OfOffers } from './job-quotes-of.js'
import { whatWasWrong } from './terms-tried.js'

export function LinesOf({ of, told }: { readonly of: OfOffers; readonly told: readonly AskedOffer[] }) {
  return (
    <Passage title={words.lines} says={words.linesSay}>
      {told.map((one, rank) => {
        const name = upperFirst(sayWho(one.offer, of.say))
        if (rank > 0)
          return (
            <Behind key={one.offer.entry} name={name}>
              <Lines of={of} one={one} name={name} />
            </Behind>
          )
        return (
          <section key={one.offer.entry} aria-label={name}>
            <h3>{name}</h3>
            <Lines of={of} one={one} name={name} />
          </section>
        )
      })}
    </Passage>
  )
}

interface LinesProps {
  readonly of: OfOffers
  readonly one: AskedOffer
  readonly name: string
}

function Lines({ of, one, name }: LinesProps) {
  const said = useSaid()
  const { say } = of
  const shown = one.lines.filter(({ about, money }) => about !== 'tax' || money !== 0 || one.offer.taxUnknown)
  return (
    <table className="table quote-lines" aria-label={name}>
      <Heads list={[words.line, { number: words.money }, words.why]} />
      <tbody>
        {shown.map((line) => (
          <FigureRow key={keyOf(line)} columns={3}>
            {(figures) => (
              <>
                <th scope="row">{said(sayLine(line, say))}</th>
                <td className="number">
                  {figuresOfLine(line).length === 0
                    ? say.money(line.money)
                    : figures.of('money', figureOf(of, line), { label: sayLine(line, say), leads: true })}
                </td>
                <td>{said(sayWhy(line, say))}</td>
              </>
            )}
          </FigureRow>
        ))}
        <tr className="sum">
          <th scope="row">{words.inAll}</th>
          <td className="number">
            <b>{say.money(one.expected)}</b>
          </td>
          <td />
        </tr>
      </tbody>
    </table>
  )
}

function keyOf(line: OfferLine): string {
  if (line.about === 'left-out') return line.leftOut.work
  return line.about === 'not-covered' ? line.part : line.about
}

function figureOf(of: OfOffers, line: OfferLine): FigureSaid {
  const { say } = of
  return {
    says: say.money(line.money),
    behind: () => ({
      name: sayLine(line, say),
      value: `${say.money(line.money)}: ${sayWhy(line, say)}`,
      comesFrom: words.comesFromLog,
      overrule: (
        <>
          {figuresOfLine(line).map((path) => (
            <SetFigure key={path} of={of} path={path} />
          ))}
          {of.known.log.readOnly && <span className="second">{shell.figure.readOnly}</span>}
        </>
      ),
    }),
  }
}

/** A figure of the catalogue with its source, and a field to set it. */
function SetFigure({ of, path }: { readonly of: OfOffers; readonly path: string }) {
  const said = useSaid()
  const { catalogue, known, of: set } = of
  const figure = describeFigure(catalogue, path)
  if (figure === undefined) return null
  const source = catalogue.sources.find(({ id }) => id === figure.source)?.title ?? figure.source
  const name = nameOf(of, path)
  const write = async (value: number) => {
    const draft = {
      kind: 'overrule',
      boat: set.boat,
      set: set.set,
      from: today(),
      body: { path, value },
    } as Draft
    const written = await known.log.append([draft])
    return written.ok ? undefined : whatWasWrong(written.problems)
  }
  const unit = figure.unit === '1' ? '' : figure.unit
  return (
    <span className="set-by-you">
      <span>
        {said(name)}: <b>{`${sayNumber(figure.value)} ${unit}`.trim()}</b>{' '}
        <span className="second">{words.restsOn(source, figure.place, shell.held[figure.held])}</span>
      </span>
      {!known.log.readOnly && (
        <Overrule name={name} unit={unit} value={Number(figure.value.toPrecision(3))} onWrite={write} />
      )}
    </span>
  )
}

function nameOf({ catalogue, say }: OfOffers, path: string): string {
  const [list, id = ''] = path.split('.')
  if (list === 'access')
    return words.figures.opening(catalogue.access.find((way) => way.id === id)?.name ?? id)
  if (list === 'parts')
    return path.includes('.hours.') ? words.figures.hands(say.part(id)) : words.figures.piece(say.part(id))
  return words.figures.named[path] ?? path
}
