/**
 * A day by the hour: what the set gives as planned, and today.
 *
 * @module
 */

export interface DayBarsProps {
  /** Means of the hours. [kW] */
  readonly planKW: readonly number[]
  readonly todayKW: readonly number[]
  readonly words: {
    readonly drawing: string
    readonly axis: string
    readonly plan: string
    readonly today: string
  }
}

const height = 200
const head = 22
const foot = 44

export function DayBars({ planKW, todayKW, words }: DayBarsProps) {
  const top = Math.max(1, ...planKW, ...todayKW) * 1.05
  const y = (kW: number) => head + height * (1 - kW / top)
  const step = top > 12 ? 4 : top > 5 ? 2 : 1
  const lines = Array.from({ length: Math.floor(top / step) }, (_, i) => (i + 1) * step)
  const width = 100 / planKW.length
  const hours = planKW.map((kW, hour) => ({ hour, kW, today: todayKW[hour] ?? 0 }))
  return (
    <div className="day-bars">
      <svg className="drawing" height={head + height + foot} role="img" aria-label={words.drawing}>
        <title>{words.drawing}</title>
        <rect className="planned" x="0" y="3" width="12" height="10" />
        <text className="second" x="18" y="13">
          {words.plan}
        </text>
        <rect className="today" x="92" y="3" width="12" height="10" />
        <text className="second" x="110" y="13">
          {words.today}
        </text>
        {lines.map((kW) => (
          <line key={kW} className="rule" x1="0" x2="100%" y1={y(kW)} y2={y(kW)} />
        ))}
        {hours.map(({ hour, kW, today }) => (
          <g key={hour}>
            {kW > 0 && (
              <rect
                className="planned"
                x={`${width * (hour + 0.15)}%`}
                width={`${0.7 * width}%`}
                y={y(kW)}
                height={head + height - y(kW)}
              />
            )}
            {today > 0 && (
              <rect
                className="today"
                x={`${width * (hour + 0.05)}%`}
                width={`${0.9 * width}%`}
                y={y(today)}
                height={head + height - y(today)}
              />
            )}
          </g>
        ))}
        {lines.map((kW) => (
          <text key={kW} className="second cut" x="2" y={y(kW) - 4}>
            {kW} kW
          </text>
        ))}
        <line className="line-2" x1="0" x2="100%" y1={head + height} y2={head + height} />
        {[0, 6, 12, 18, 24].map((hour) => (
          <text
            key={hour}
            className="second"
            x={`${(100 * hour) / 24}%`}
            y={head + height + 17}
            textAnchor={hour === 0 ? 'start' : hour === 24 ? 'end' : 'middle'}
          >
            {hour}
          </text>
        ))}
        <text className="second" x="0" y={head + height + 36}>
          {words.axis}
        </text>
      </svg>
    </div>
  )
}
