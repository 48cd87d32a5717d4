/**
 * Pictures of entries: attached to a new one, and shown with those that have them.
 *
 * @module
 */

import { useId, useRef, useState } from 'react'
import type { Photograph, ThumbnailWidth } from '../../logbook/photographs.js'
import { PlainButton } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { logbook } from '../words/logbook.js'
import { chosenPicture } from './chosen-pictures.js'

/** HEIC is not asked for: a phone that is asked for JPEG turns its own pictures into it. One that comes all the same is kept. */
const asked = 'image/jpeg,image/png,image/webp'

/** Chooses pictures, from the camera where there is one. What is chosen is kept before the entry is written. */
export function PictureChoice({
  files,
  onChange,
}: {
  readonly files: readonly File[]
  readonly onChange: (files: readonly File[]) => void
}) {
  const id = useId()
  const [told, setTold] = useState<readonly string[]>([])
  // What was chosen while another file was still being looked at is not lost.
  const latest = useRef(files)
  latest.current = files
  const take = async (list: readonly File[]) => {
    const chosen = await Promise.all(list.map(chosenPicture))
    const taken = chosen.flatMap((one) => (one.ok ? [one.file] : []))
    latest.current = [...latest.current, ...taken]
    if (taken.length > 0) onChange(latest.current)
    setTold(
      chosen.flatMap((one) => {
        if (!one.ok) return [form.pictureWrong(one.name, one.why)]
        return one.heic ? [form.pictureHeic(one.file.name)] : []
      }),
    )
  }
  return (
    <div className="entry-field wide">
      <label htmlFor={id}>{form.pictures}</label>
      <input
        id={id}
        type="file"
        className="file"
        accept={asked}
        multiple
        aria-describedby={`${id}-help`}
        // The field is empty again once a picture is taken over, so that the same one can be chosen anew.
        onChange={({ target }) => {
          void take([...(target.files ?? [])])
          target.value = ''
        }}
      />
      <p className="fine" id={`${id}-help`}>
        {form.picturesHelp}
      </p>
      <div aria-live="polite">
        {told.map((line) => (
          <p className="problem" key={line}>
            {line}
          </p>
        ))}
      </div>
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

/** A picture in the size of the page, upright and without its place; the file itself, and a copy to send on, beside it. */
function Picture({ photograph }: { readonly photograph: Photograph }) {
  const [failed, setFailed] = useState(false)
  const path = `/api/photographs/${photograph.sha256}`
  const heic = photograph.type === 'image/heic'
  return (
    <span className="picture">
      {failed || heic ? (
        <span className="fine">{heic ? logbook.heic : logbook.cannotShow} </span>
      ) : (
        <img
          {...sizesOf(photograph.sha256)}
          alt={logbook.picture(photograph.shows ?? '')}
          onError={() => setFailed(true)}
        />
      )}
      <a className="fine" href={path} target="_blank" rel="noreferrer">
        {logbook.openPicture}
      </a>
      {!heic && (
        <>
          {' '}
          <a className="fine" href={`${path}/copy`} target="_blank" rel="noreferrer">
            {logbook.copyPicture}
          </a>
        </>
      )}
    </span>
  )
}

/** Where a browser gets a picture, and in which widths. */
export function sizesOf(sha256: string): {
  readonly src: string
  readonly srcSet: string
  readonly sizes: string
} {
  const at = (width: ThumbnailWidth) => `/api/photographs/${sha256}/${width}`
  return {
    src: at(480),
    srcSet: `${at(480)} 480w, ${at(1280)} 1280w`,
    sizes: '(max-width: 700px) 100vw, 480px',
  }
}
