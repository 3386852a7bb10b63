import { describe, expect, it } from 'vitest'
import { words } from '../../src/phrase/words.ts'
import { slipsFor } from '../../src/slips-for.ts'
import { examplePlans } from '../print/examples.ts'

const cards = (name: string) => slipsFor(examplePlans().find(([one]) => one.startsWith(name))![1])
const said = (name: string, units: 'inch' | 'mm' = 'inch') =>
  cards(name).map(({ signs }) => signs.map((sign) => words(sign, units)))

describe('signs of what cannot be replayed', () => {
  it('a tool drawn out without a rest leaves twice its feed: .002 a turn is .004 across (plane geometry)', () => {
    expect(said('01')[0]![0]).toContain('a spiral of up to .004 across')
  })

  // 11.5 millionths a degree (NIST) × 20 degrees × .8745 in = .0002.
  it('warm work shrinks by what its metal does', () => {
    expect(said('01')[0]![1]).toContain('.0002 small on .8745 when cold')
  })

  it('what may be seen on any form is told once', () => {
    const [first, ...others] = said('14')
    expect(first!.join()).toContain('the carriage was not locked')
    expect(others.length).toBeGreaterThan(2)
    for (const signs of others) expect(signs.join()).not.toContain('the carriage was not locked')
  })
})
