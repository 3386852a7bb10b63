import { describe, expect, it } from 'vitest'
import { correctedFor, type Shop } from '../../src/finish/measured.ts'
import { stopOf } from '../../src/finish/stop.ts'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Move, Operation, WantedDimension } from '../../src/moves/operation.ts'
import { replay, startOf } from '../../src/replay/replay.ts'
import { bar, begin, bench, feed, groove, inch, move, out, toInch } from '../replay/shop.ts'

/** A groove as wide as its tool, roughed to .052 and finished to .072. */
const setup = bar([1.5, 4])
const progress = startOf(setup)
const of = (id: WantedDimension['id'], aim: number): WantedDimension => ({ id, aim: inch(aim), limits: null })
const measured: Move = { ...move('measure'), purpose: 'expect-rough' }
const finish: Move = { ...feed(72), purpose: 'finish' }
const plunged = (
  before: readonly Move[] = [],
  standing: readonly Move[] = [move('stop')],
  then: readonly Move[] = [],
): Operation => ({
  ...groove(1.125, 0.148, 0.072, [
    ...before,
    ...begin,
    feed(52),
    out(-50),
    ...standing,
    measured,
    ...then,
    move('start'),
    finish,
    out(-50),
    move('stop'),
  ]),
  dimensions: [of('width', 0.148), of('depth', 0.072), of('bottomDiameter', 1.356)],
})
const shopOf = (operation: Operation, lathe: Lathe = bench): Shop => {
  const stop = stopOf(operation, replay(lathe, setup, [operation]).operations[0]!)!
  return { lathe, setup, progress, operation, stop }
}

/** Every reading that is tried asks for the moves that finish, once a move. */
const patient = (shop: Shop): Shop => {
  let asked = 0
  const stop = {
    ...shop.stop,
    get finishes() {
      asked += 1
      if (asked > 5000) throw new Error('the search does not end')
      return shop.stop.finishes
    },
  }
  return { ...shop, stop }
}

describe('a plan from a measured bottom', () => {
  it('tells of no fault before the stop: neither of the very first move nor of the stop itself', () => {
    const kinds = (operation: Operation) =>
      replay(bench, setup, [operation]).faults.map(({ kind, move: at }) => [kind, at])
    const early = plunged([feed(10)])
    const running = plunged([], [])
    expect(kinds(early)).toEqual([['open-zero', 0]])
    expect(kinds(running)).toEqual([['spindle-standing', shopOf(running).stop.at]])
    for (const operation of [early, running])
      expect(correctedFor(shopOf(operation), inch(1.396)).faults, operation.moves[0]!.action).toEqual([])
  })
  it('has the bottom of its own lathe, also where the same moves were tried on another before', () => {
    const operation = plunged()
    // A mark of the other cross-feed is two thousandths.
    const coarse: Lathe = { ...bench, crossFeed: { ...bench.crossFeed, graduation: inch(0.002) } as Lathe['crossFeed'] }
    const stop = shopOf(operation).stop
    for (const lathe of [bench, coarse]) {
      const shop = patient({ lathe, setup, progress, operation, stop })
      const [one, other] = [correctedFor({ ...shop, many: true }, inch(1.396)), correctedFor(shop, inch(1.396))]
      expect([one.deeper, toInch(one.bottom)]).toEqual([other.deeper, toInch(other.bottom)])
      expect(one.trace.zero).toEqual(other.trace.zero)
      expect(one.trace.surely).toEqual(other.trace.surely)
    }
  })
})

describe('the search for the reading that comes nearest', () => {
  it('ends where the bottom is deep enough already: less deep leaves it as it is', () => {
    // 1.396 is expected: the zero stands .023 in, and .049 of .072 are left to go by the dial.
    const { deeper, bottom } = correctedFor(patient(shopOf(plunged())), inch(1.35))
    expect([deeper, toInch(bottom)]).toEqual([-23, expect.closeTo(1.35, 9)])
  })
  it('ends where the finish surely cuts nothing, with the carriage free: deeper leaves it as it is', () => {
    const loose = shopOf(plunged([], [move('stop')], [move('unlock')]))
    const { deeper, bottom } = correctedFor(patient(loose), inch(1.396))
    expect([deeper, toInch(bottom)]).toEqual([0, expect.closeTo(1.396, 9)])
  })
})
