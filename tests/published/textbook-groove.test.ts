import { expect, it } from 'vitest'
import { planned } from './whole-job.ts'

/**
 * The textbook's groove, common practice, no source: 3/16 wide and 1/8 deep with a tool .012 under, .025 left. In to 100,
 * out, over to 12, in to 100; back past 0 and onto it, in to 125, across to 12.
 */
it('a groove 3/16 by 1/8 with a tool .012 under: 100; 12 over; 100; 0; 125; 12', () => {
  const { sheet } = planned({
    units: 'inch',
    part: 'diameter: 1, length: 3',
    tool: 'shape: square, width: 0.1755, reach: 0.25',
    feature: 'kind: groove, width: 3/16, depth: 1/8, near: 1, leave: 0.025, walls: swept',
  })
  const readings = sheet.steps.flatMap(({ slide, action, reading }) =>
    (action === 'feed-in' && slide === 'cross-feed') ||
    (slide === 'compound' && ['shift', 'return', 'feed-across'].includes(action))
      ? [`${slide} ${Math.round(1000 * (reading ?? 0))}`]
      : [],
  )
  expect(readings).toEqual([
    'cross-feed 100',
    'compound 12',
    'cross-feed 100',
    'compound 0',
    'cross-feed 125',
    'compound 12',
  ])
})
