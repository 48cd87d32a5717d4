/**
 * Pictures of entries: attached to a new one, and shown with those that have them.
 *
 * @module
 */

import { useId, useState } from 'react'
import { photographTypes } from '../../logbook/atoms.js'
import type { Photograph } from '../../logbook/photographs.js'
import { PlainButton } from '../parts/index.js'
import { form, logbook } from '../words/logbook.js'

/** Chooses pictures, from the camera where there is one. What is chosen is kept before the entry is written. */
export function PictureChoice({
  files,
  onChange,
}: {
  readonly files: readonly File[]
  readonly onChange: (files: readonly File[]) => void
}) {
  const id = useId()
  return (
    <div className="entry-field wide">
      <label htmlFor={id}>{form.pictures}</label>
      <input
        id={id}
        type="file"
        className="file"
        accept={photographTypes.join(',')}
        multiple
        aria-describedby={`${id}-help`}
        // The field is empty again once a picture is taken over, so that the same one can be chosen anew.
        onChange={({ target }) => {
          onChange([...files, ...(target.files ?? [])])
          target.value = ''
        }}
      />
      <p className="fine" id={`${id}-help`}>
        {form.picturesHelp}
      </p>
      {files.length > 0 && (
        <ul className="chosen" aria-label={form.picturesChosen}>
          {files.map((file, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two pictures may have the same name
            <li key={at}>
              {file.name}{' '}
              <PlainButton onClick={() => onChange(files.toSpliced(at, 1))}>
                {form.dropPicture}
                <span className="unseen">, {file.name}</span>
              </PlainButton>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}

/** Pictures folded under their number, fetched when they are opened. */
export function Pictures({ of }: { readonly of: readonly Photograph[] }) {
  const [open, setOpen] = useState(false)
  if (of.length === 0) return null
  return (
    <>
      {' '}
      <PlainButton aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? logbook.hidePictures : logbook.pictures(of.length)}
      </PlainButton>
      {open && (
        <span className="pictures">
          {of.map((photograph) => (
            <Picture key={photograph.sha256} photograph={photograph} />
          ))}
        </span>
      )}
    </>
  )
}

function Picture({ photograph }: { readonly photograph: Photograph }) {
  const [failed, setFailed] = useState(false)
  const path = `/api/photographs/${photograph.sha256}`
  const shows = logbook.picture(photograph.shows ?? '')
  return (
    <span className="picture">
      {failed ? (
        <span className="fine">{logbook.cannotShow} </span>
      ) : (
        <img src={path} alt={shows} onError={() => setFailed(true)} />
      )}
      <a className="fine" href={path} target="_blank" rel="noreferrer">
        {logbook.openPicture}
      </a>
    </span>
  )
}
