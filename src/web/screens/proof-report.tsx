/**
 * The proof report: tests, limits, sources, who tested, open points and lines to sign on. Prints on A4 and Letter.
 *
 * @module
 */

import { type ReportRow, reportOf } from '../../proof/report.js'
import { sayFigure } from '../../proof/say-figure.js'
import { useSaid } from '../data/region.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'
import { Heads, Link, Passage, Preparing, Tag, WideTable } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { setInOneLine } from '../set-line.js'
import { words } from '../words/proof.js'
import { sayDate } from '../words/say.js'
import { MarkedPhotograph } from './job-apart-picture.js'
import { useProof } from './of-proof.js'
import '../look/job-apart.css'
import '../look/links.css'
import '../look/proof.css'

const { paper } = words

export function ProofReportScreen(of: OfSet) {
  const said = useSaid()
  const proof = useProof(of)
  if (proof === undefined) return <Preparing title={paper.title} words={words.waiting} />
  const { owed, log } = proof
  const report = reportOf(owed)
  return (
    <div className="proof proof-report">
      <p className="screen-only small gap-small">
        {paper.how} <Link to={pathTo({ page: 'proof', ...of })}>{paper.back}</Link>
      </p>
      <Passage title={paper.title} first>
        <p className="lead">
          {log.name}. {setInOneLine(log.entries, of.set)}. {paper.asOf} {sayDate(today())}.
        </p>
        <p className="small gap-small">
          {paper.who}: {report.testers.join(', ') || paper.notSaid}. {paper.instruments}:{' '}
          {report.instruments.join(', ') || paper.notSaid}.
        </p>
      </Passage>
      <Passage title={paper.steps}>
        <ul className="sentences small">
          {owed.gates.map(({ stage, name, says }) => (
            <li key={stage}>
              <b>{said(name)}.</b> {said(says)}
            </li>
          ))}
        </ul>
      </Passage>
      <Passage title={paper.open} className="long">
        {report.open.length === 0 ? (
          <p>{paper.openNone}</p>
        ) : (
          <ul className="sentences small">
            {report.open.map((line) => (
              <li key={line}>{said(line)}</li>
            ))}
          </ul>
        )}
      </Passage>
      <Passage title={paper.results} says={paper.resultsSays} className="long wide">
        {report.rows.length === 0 ? (
          <p>{paper.none}</p>
        ) : (
          <WideTable name={paper.results}>
            <table className="table proof-results">
              <Heads list={[paper.heads.test, paper.heads.verdict, paper.heads.limits, paper.heads.who]} />
              <tbody>
                {report.rows.map((row) => (
                  <Row key={row.result.entry} row={row} />
                ))}
              </tbody>
            </table>
          </WideTable>
        )}
      </Passage>
      <ReportPhotographs rows={report.rows} />
      <Passage title={paper.caution}>
        <ul className="sentences small">
          {paper.cautions.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <ul className="proof-sign fine">
          {paper.sign.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Passage>
    </div>
  )
}

/** What was photographed at each test, with the test's name over it. */
function ReportPhotographs({ rows }: { readonly rows: readonly ReportRow[] }) {
  const said = useSaid()
  const shown = rows.filter(({ result }) => result.photographs.length > 0)
  if (shown.length === 0) return null
  return (
    <Passage title={paper.photographed}>
      {shown.map(({ result, name }) => (
        <section key={result.entry}>
          <h3 className="small">
            {said(name)}, {sayDate(result.date)}
          </h3>
          <div className="sheet-pictures">
            {result.photographs.map((photograph) => (
              <MarkedPhotograph key={photograph.sha256} photograph={photograph} />
            ))}
          </div>
        </section>
      ))}
    </Passage>
  )
}

function Row({ row: { result, name, read, limits } }: { readonly row: ReportRow }) {
  const said = useSaid()
  const { judgement, part, date, testedBy, instrument, remark, photographs } = result
  const fails = judgement.verdict === 'fail'
  return (
    <tr>
      <th scope="row">
        {said(name)}
        {part !== undefined && `, ${part.replaceAll('-', ' ')}`}
        <span className="fine">{read.map(said).join('; ')}</span>
      </th>
      <td>
        {fails ? <Tag look="solid">{words.judged.fail}</Tag> : <b>{words.judged[judgement.verdict]}</b>}
        <span className="fine">{said(judgement.says)}</span>
      </td>
      <td className="fine">
        {limits.map((limit) => (
          <span key={limit.id}>
            {said(words.judged.limit({ ...limit, value: sayFigure(limit.value, limit.unit) }))}
          </span>
        ))}
      </td>
      <td className="fine">
        {[
          sayDate(date),
          testedBy,
          instrument,
          remark,
          photographs.length > 0 ? paper.photographs(photographs.length) : undefined,
        ]
          .filter(Boolean)
          .join('; ')}
      </td>
    </tr>
  )
}
