/**
 * What this tab tells the others of this browser, so that all show the same.
 *
 * @module
 */

import { refreshBoats, refreshLog } from './log.js'
import { reloadOutbox } from './outbox.js'

/** The outbox changed; the server has something new of a boat. */
export type News = { readonly news: 'outbox' } | { readonly news: 'log'; readonly boat: string }

const channel = new BroadcastChannel('gensettle')

channel.onmessage = ({ data }: MessageEvent<News>) => {
  if (data.news === 'outbox') void reloadOutbox()
  else void refreshBoats().then(() => refreshLog(data.boat))
}

export function tellOtherTabs(news: News): void {
  channel.postMessage(news)
}
