/**
 * Whether the owner's boats hear one another's lessons.
 *
 * @module
 */

import { hear, useLessons } from '../data/lessons.js'
import { saidProblem } from '../entry/problems.js'
import { Passage } from '../parts/index.js'
import { settings } from '../words/settings.js'

const words = settings.lessons

export function SettingsLessons() {
  const { heard, status, problems } = useLessons()
  return (
    <Passage title={words.title} says={words.says}>
      <p className="prose">{words.say}</p>
      <p className="picks gap-small">
        <label>
          <input
            type="checkbox"
            checked={heard}
            disabled={status === 'loading'}
            onChange={({ target }) => void hear(target.checked)}
          />
          {words.heard}
        </label>
      </p>
      <p className="small prose gap-small">{words.shown}</p>
      <div aria-live="polite">
        {problems.length > 0 && (
          <p className="problem">{problems.map((one) => saidProblem(one)).join(' ')}</p>
        )}
      </div>
    </Passage>
  )
}
