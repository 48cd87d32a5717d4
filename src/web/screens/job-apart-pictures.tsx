/**
 * Pictures that are chosen for a step, each with what it is to show and arrows on it; kept from the first one.
 *
 * @module
 */

import { useEffect, useId, useRef, useState } from 'react'
import type { PictureTold } from '../data/browser-store.js'
import { useKeptPictures } from '../data/kept-pictures.js'
import { useKept } from '../data/kept-text.js'
import type { ToldPicture } from '../data/write.js'
import { chosenPicture } from '../entry/chosen-pictures.js'
import { PlainButton } from '../parts/index.js'
import { form } from '../words/entry/form.js'
import { words } from '../words/job-apart.js'
import { ArrowBoard } from './job-apart-picture.js'

export interface StepPictures {
  readonly list: readonly ToldPicture[]
  readonly add: (file: File, shows: string) => void
  readonly change: (at: number, told: PictureTold) => void
  readonly drop: (at: number) => void
  readonly clear: () => void
}

/** The pictures chosen under a name. */
export function useStepPictures(slot: string): StepPictures {
  const [files, setFiles] = useKeptPictures(slot)
  const [told, setTold] = useKept<readonly PictureTold[]>(`${slot}.pictures`, [])
  const list = files.map((file, at): HeldPicture => ({ file, told: told[at] ?? {} }))
  // What was chosen while another file was still being looked at is not lost.
  const latest = useRef(list)
  latest.current = list
  const put = (next: HeldPicture[]) => {
    latest.current = next
    setTold(next.length === 0 ? undefined : next.map((one) => one.told))
    setFiles(next.map(({ file }) => file))
  }
  return {
    list,
    add: (file, shows) => put([...latest.current, { file, told: shows === '' ? {} : { shows } }]),
    change: (at, one) => put(latest.current.with(at, { ...latest.current[at]!, told: one })),
    drop: (at) => put(latest.current.toSpliced(at, 1)),
    clear: () => put([]),
  }
}

interface HeldPicture extends ToldPicture {
  readonly file: File
}

/** A place for each picture that is wanted, and for one more. */
export function StepPictureSlots({
  slots,
  pictures,
}: {
  readonly slots: readonly string[]
  readonly pictures: StepPictures
}) {
  const shown = (slot: string) => pictures.list.flatMap(({ told }, at) => (told.shows === slot ? [at] : []))
  const others = pictures.list.flatMap(({ told }, at) =>
    told.shows !== undefined && slots.includes(told.shows) ? [] : [at],
  )
  return (
    <ul className="apart-slots">
      {slots.map((slot) => (
        <li key={slot}>
          <Choose name={words.picture.choose(slot)} onFile={(file) => pictures.add(file, slot)} />
          {shown(slot).map((at) => (
            <Chosen key={at} at={at} pictures={pictures} />
          ))}
        </li>
      ))}
      <li>
        <Choose name={words.step.another} onFile={(file) => pictures.add(file, '')} />
        {others.map((at) => (
          <Chosen key={at} at={at} pictures={pictures} />
        ))}
      </li>
    </ul>
  )
}

function Choose({ name, onFile }: { readonly name: string; readonly onFile: (file: File) => void }) {
  const id = useId()
  const [told, setTold] = useState('')
  const take = async (file: File | undefined) => {
    if (file === undefined) return
    const chosen = await chosenPicture(file)
    setTold(
      !chosen.ok
        ? form.pictureWrong(chosen.name, chosen.why)
        : chosen.heic
          ? form.pictureHeic(chosen.file.name)
          : '',
    )
    if (chosen.ok) onFile(chosen.file)
  }
  return (
    <div className="entry-field wide">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        type="file"
        className="file"
        accept="image/jpeg,image/png,image/webp"
        onChange={({ target }) => {
          void take(target.files?.[0])
          target.value = ''
        }}
      />
      <div aria-live="polite">{told !== '' && <p className="problem">{told}</p>}</div>
    </div>
  )
}

function Chosen({ at, pictures }: { readonly at: number; readonly pictures: StepPictures }) {
  const { file, told } = pictures.list[at]!
  const src = useAddress(file)
  const name = told.shows ?? (file instanceof File ? file.name : words.step.another)
  return (
    <div className="apart-chosen">
      {file.type === 'image/heic' ? (
        <p className="fine">{words.picture.noDrawing}</p>
      ) : (
        src !== undefined && (
          <ArrowBoard
            src={src}
            alt={name}
            arrows={told.arrows ?? []}
            onChange={(arrows) => {
              const { arrows: _, ...bare } = told
              pictures.change(at, arrows.length === 0 ? bare : { ...bare, arrows })
            }}
          />
        )
      )}
      <PlainButton onClick={() => pictures.drop(at)}>
        {words.picture.drop}
        <span className="unseen">, {name}</span>
      </PlainButton>
    </div>
  )
}

/** An address by which the page shows a file that is only in this browser. */
function useAddress(file: Blob): string | undefined {
  const [address, setAddress] = useState<string>()
  useEffect(() => {
    const made = URL.createObjectURL(file)
    setAddress(made)
    return () => URL.revokeObjectURL(made)
  }, [file])
  return address
}
