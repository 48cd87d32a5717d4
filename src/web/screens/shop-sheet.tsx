/**
 * The sheet that goes to a workshop with the part, as it stands on paper.
 *
 * @module
 */

import { useMemo, useState } from 'react'
import { programVersion } from '../../alternatives/program-version.js'
import { limitsOf } from '../../proof/limits.js'
import { patternJoined } from '../../proof/links/patterns.js'
import { jobsOfQuotes, type ShopSheet, shopSheetOf } from '../../proof/shop-sheet.js'
import { type ShopJob, shopJobs } from '../../proof/shop-sheet-wants.js'
import { useKept } from '../data/kept-text.js'
import type { OfSet } from '../of-set.js'
import { Link, Preparing } from '../parts/index.js'
import { pathTo } from '../routes.js'
import { words } from '../words/links.js'
import { Choice, TextField } from './links-fields.js'
import { type LinksOf, useLinksOf } from './links-of.js'
import { SheetPaper } from './sheet-paper.js'
import '../look/links.css'

export function ShopSheetScreen(of: OfSet) {
  const links = useLinksOf(of)
  if (links === undefined) return <Preparing title={words.sheet.title} words={words.preparing} />
  return <Sheet of={of} links={links} />
}

function Sheet({ of, links: known }: { readonly of: OfSet; readonly links: LinksOf }) {
  const { register, log, links, catalogue, found, values } = known
  const quoted = useMemo(() => jobsOfQuotes(register, log.entries), [register, log.entries])
  const [chosen, setJobs] = useKept<readonly ShopJob[]>(`${of.boat}.${of.set}.shop-jobs`, quoted)
  const [asks, setAsks] = useKept<string>(`${of.boat}.${of.set}.shop-words`, '')
  const [price, setPrice] = useState('')
  const [linked, setLinked] = useState('')
  const pattern = links.patterns.find(({ id }) => id === linked)
  const askAbove = Number(price.replace(/[\s,]/g, ''))
  const sheet = useMemo((): ShopSheet => {
    return shopSheetOf({
      register,
      entries: log.entries,
      limits: limitsOf(catalogue),
      jobs: chosen.length === 0 ? ['test'] : chosen,
      asks: asks.trim() === '' ? undefined : asks.trim(),
      found: found && { record: found.record, values },
      wanted: pattern && found && { pattern, joined: patternJoined(links, pattern, found.record.marks) },
      askAbove: askAbove > 0 ? askAbove : undefined,
      demonstration: log.readOnly,
      program: programVersion,
    })
  }, [register, log, catalogue, chosen, asks, found, values, pattern, links, askAbove])
  const { sheet: says } = words
  const toggle = (job: ShopJob) =>
    setJobs(shopJobs.filter((one) => (one === job ? !chosen.includes(job) : chosen.includes(one))))
  return (
    <div className="brief">
      <div className="screen-only">
        <p className="brief-how small">
          {says.print} <Link to={pathTo({ page: 'links', ...of })}>{says.back}</Link>
        </p>
        <div className="links-fields">
          <fieldset className="wide">
            <legend>{says.ask}</legend>
            <div className="picks">
              {shopJobs.map((job) => (
                <label key={job}>
                  <input type="checkbox" checked={chosen.includes(job)} onChange={() => toggle(job)} />
                  {says.jobs[job]}
                </label>
              ))}
            </div>
          </fieldset>
          <TextField name={says.words} hint="" value={asks} onChange={setAsks} />
          <TextField
            name={`${says.askAbove}, ${register.boatFacts.currency ?? ''}`}
            hint="2,400"
            value={price}
            onChange={setPrice}
          />
          {found?.record.known !== undefined && (
            <Choice
              name={says.linked}
              value={linked}
              options={[
                ['', says.asFound],
                ...links.patterns
                  .filter(({ winding }) => winding === found.record.known?.id)
                  .map(({ id, name }) => [id, name] as const),
              ]}
              onChange={setLinked}
            />
          )}
        </div>
      </div>
      <SheetPaper sheet={sheet} />
    </div>
  )
}
