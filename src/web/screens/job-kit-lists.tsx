/**
 * What suppliers are told: a table for each kind of supplier, which prints, and the same as a message to copy.
 *
 * @module
 */

import { useState } from 'react'
import type { SupplierLine, SupplierList } from '../../job/kit-message.js'
import { Behind, Button, Passage } from '../parts/index.js'
import { words } from '../words/job-kit.js'

export function KitLists({ lists }: { readonly lists: readonly SupplierList[] }) {
  return (
    <Passage title={words.lists} says={words.listsSay} className="kit-lists">
      {lists.length === 0 && <p className="prose">{words.listsNone}</p>}
      {lists.map((list) => (
        <section key={list.supplier} className="kit-list" aria-labelledby={`kit-list-${list.supplier}`}>
          <h3 id={`kit-list-${list.supplier}`}>{list.name}</h3>
          <table>
            <thead>
              <tr>
                <th scope="col">{words.piece}</th>
                <th scope="col">{words.howMany}</th>
                <th scope="col">{words.toTell}</th>
              </tr>
            </thead>
            <tbody>
              {list.lines.map((line) => (
                <Line key={line.key} line={line} counted={list.supplier !== 'winding'} />
              ))}
              {list.stuff.map((name) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td />
                  <td />
                </tr>
              ))}
            </tbody>
          </table>
          <Message list={list} />
        </section>
      ))}
    </Passage>
  )
}

function Line({ line, counted }: { readonly line: SupplierLine; readonly counted: boolean }) {
  const { name, told, open } = line
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{counted && words.count(line)}</td>
      <td>
        <ul>
          {told.map(({ tell, answer }) => (
            <li key={tell}>
              {tell}: <b>{answer}</b>
            </li>
          ))}
          {open.length > 0 && <li className="second">{words.open(open.join('; '))}</li>}
        </ul>
      </td>
    </tr>
  )
}

function Message({ list: { name, message } }: { readonly list: SupplierList }) {
  const [copied, setCopied] = useState('')
  const copy = () =>
    void navigator.clipboard.writeText(message).then(
      () => setCopied(words.copied),
      () => setCopied(words.notCopied),
    )
  return (
    <div className="screen-only kit-message">
      <div className="acts">
        <Button onClick={copy}>{words.copy}</Button>
        <span aria-live="polite">{copied}</span>
      </div>
      <Behind name={words.message(name)}>
        <pre>{message}</pre>
      </Behind>
    </div>
  )
}
