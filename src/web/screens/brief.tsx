/**
 * The decision brief: all that somebody who was not there must be told of the choice, on two pages.
 *
 * @module
 */

import { useContext, useMemo } from 'react'
import { answerSeed } from '../../alternatives/answer-key.js'
import { type Brief, briefInWords, briefOf, isShort } from '../../alternatives/brief.js'
import { programVersion } from '../../alternatives/program-version.js'
import { useBoat } from '../data/boat.js'
import { useCatalogue } from '../data/catalogue.js'
import { RegionOfPage } from '../data/region.js'
import { useLive } from '../data/value.js'
import type { OfSet } from '../of-set.js'
import { Failed, Link, Preparing, Refining } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/brief.js'
import { inRegion } from '../words/region.js'
import { withUnits } from '../words/say.js'
import { type Answer, useAnswer } from '../work/answers.js'
import { type Bearing, useBearing } from '../work/bearings.js'
import { BriefPassages } from './brief-passages.js'
import '../look/marks.css'
import '../look/brief.css'

/** As the log stands: no price is moved here. */
const unmoved = {}

export function BriefScreen(of: OfSet) {
  const answer = useAnswer(of.boat, of.set)
  const bearing = useBearing(answer, unmoved)
  const brief = useBrief(of, answer, bearing)
  const problem = answer.problem ?? bearing.problem
  if (problem !== undefined) {
    const again = { says: words.failed.again, act: answer.problem === undefined ? bearing.goOn : answer.goOn }
    return <Failed title={words.title} words={words.failed} problem={problem} again={again} />
  }
  const back = <Link to={pathTo({ page: 'alternatives', ...of })}>{words.back}</Link>
  if (brief === undefined) return <Waiting answer={answer} bearing={bearing} back={back} />
  return (
    <div className={isShort(brief) ? 'brief roomy' : 'brief'}>
      <p className="brief-how screen-only small">
        {answer.following || bearing.following ? words.following : words.print} {back}
      </p>
      <BriefPassages brief={brief} />
    </div>
  )
}

function Waiting(of: { readonly answer: Answer; readonly bearing: Bearing; readonly back: React.ReactNode }) {
  const { answer, bearing } = of
  const { stage, histories, wanted } = useLive(answer.progress)
  const { waiting } = words
  const stands = stage === 'done'
  const isStopped = stands ? bearing.stage === 'stopped' : stage === 'stopped'
  const there = [bearing.findingOut, bearing.changes, bearing.when].filter((part) => part !== undefined)
  const lead = isStopped
    ? waiting.stopped
    : stands
      ? `${waiting.bearing} ${waiting.parts(there.length)}`
      : waiting.answer
  const share = stands ? (bearing.share ?? 0) : wanted > 0 ? histories / wanted : 0
  const progress = (
    <Refining
      share={share}
      state={isStopped ? 'stopped' : 'refining'}
      word={waiting.word}
      onStop={stands ? bearing.stop : answer.stop}
      onGoOn={stands ? bearing.goOn : answer.goOn}
    />
  )
  const margin = (
    <>
      <p>{of.back}</p>
      {progress}
    </>
  )
  return <Preparing title={words.title} words={{ say: waiting.say, lead }} margin={margin} />
}

/** None until the answer stands and all that bears on it is there. */
function useBrief(of: OfSet, answer: Answer, bearing: Bearing): Brief | undefined {
  const log = useBoat(of.boat)
  const catalogue = useCatalogue()
  const region = useContext(RegionOfPage)
  const { basis, view } = answer
  const { stage, findingOut, changes, when } = bearing
  return useMemo(() => {
    if (basis === undefined || view === undefined || catalogue === undefined || stage !== 'done')
      return undefined
    if (findingOut === undefined || changes === undefined || when === undefined) return undefined
    const { register, model, stops, restsOn, assumed, problems, heard } = basis
    const brief = briefOf({
      register,
      model,
      stops,
      report: view.report,
      rows: view.rows,
      findingOut,
      changes,
      when,
      restsOn,
      assumed,
      problems,
      ...(heard === undefined ? {} : { heard: [heard] }),
      catalogue,
      numbers: new Map(log.kept.map(({ id }, at) => [id, at + 1])),
      seed: answerSeed,
      program: programVersion,
      demonstration: log.readOnly,
    })
    return briefInWords(brief, (sentence) => withUnits(inRegion(sentence, region)))
  }, [basis, view, catalogue, stage, findingOut, changes, when, log.kept, log.readOnly, region])
}
