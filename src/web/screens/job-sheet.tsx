/**
 * The sheet of a job, as it stands on paper.
 *
 * @module
 */

import { useMemo } from 'react'
import { programVersion } from '../../alternatives/program-version.js'
import type { CalendarQuestion } from '../../job/calendar.js'
import { kitOf } from '../../job/kit.js'
import { jobSheetOf } from '../../job/sheet.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { useKits } from '../data/kits.js'
import type { OfSet } from '../of-set.js'
import { sheet as words } from '../words/job.js'
import { useCalendar } from '../work/calendar.js'
import { JobFrame, type OfJob } from './job-frame.js'
import { SheetPaper } from './sheet-paper.js'

export function JobSheetScreen(of: OfSet) {
  return (
    <JobFrame of={of} page="job-sheet">
      {(known) => <Sheet known={known} />}
    </JobFrame>
  )
}

/** The calendar follows when it is played; all else stands at once. */
function Sheet({ known }: { readonly known: OfJob }) {
  const { register, job, catalogue, owed, log } = known
  const { entries, readOnly } = log
  const forSet = useMemo(() => setCatalogueOf(register, catalogue).catalogue, [register, catalogue])
  const kits = useKits()
  const question = useMemo(
    (): CalendarQuestion => ({ job, register, entries, catalogue: forSet, seed: 1 }),
    [job, register, entries, forSet],
  )
  const planned = useCalendar(question)
  const kit = useMemo(() => {
    const { set, asOf, terms } = register
    return kits && kitOf({ job, entries, set, asOf, kits, catalogue: forSet, terms })
  }, [kits, job, entries, register, forSet])
  const calendar = typeof planned === 'object' && planned.ok ? planned.calendar : undefined
  const sheet = useMemo(
    () =>
      jobSheetOf({
        ...{ register, job, catalogue, forSet, owed, kit, calendar },
        demonstration: readOnly,
        program: programVersion,
      }),
    [register, job, catalogue, forSet, owed, kit, calendar, readOnly],
  )
  return (
    <div className="brief roomy">
      <p className="brief-how small screen-only">{words.print}</p>
      <SheetPaper sheet={sheet} />
    </div>
  )
}
