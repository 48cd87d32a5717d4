/**
 * The sheet of a job, as it stands on paper.
 *
 * @module
 */

import { useMemo } from 'react'
import { programVersion } from '../../alternatives/program-version.js'
import { jobSheetOf } from '../../job/sheet.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { OfSet } from '../of-set.js'
import { sheet as words } from '../words/job.js'
import { JobFrame, type OfJob } from './job-frame.js'
import { SheetPaper } from './sheet-paper.js'

export function JobSheetScreen(of: OfSet) {
  return (
    <JobFrame of={of} page="job-sheet">
      {(known) => <Sheet known={known} />}
    </JobFrame>
  )
}

function Sheet({ known: { register, job, catalogue, owed, log } }: { readonly known: OfJob }) {
  const sheet = useMemo(
    () =>
      jobSheetOf({
        register,
        job,
        catalogue,
        forSet: setCatalogueOf(register, catalogue).catalogue,
        owed,
        demonstration: log.readOnly,
        program: programVersion,
      }),
    [register, job, catalogue, owed, log.readOnly],
  )
  return (
    <div className="brief roomy">
      <p className="brief-how small screen-only">{words.print}</p>
      <SheetPaper sheet={sheet} />
    </div>
  )
}
