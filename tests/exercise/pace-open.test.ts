import { expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { openSteps } from '../../src/exercise/open-steps.ts'
import { words } from '../../src/phrase/words.ts'
import { examplePlans } from '../print/examples.ts'

it('how fast a dial is turned and how long the tool rests are left out where the speed is asked for', () => {
  const sheet = sheetFor(examplePlans().find(([name]) => name.startsWith('01'))![1])
  const does = (open: readonly string[]) =>
    openSteps(sheet, [], new Set(open) as never).map((step) => words(step.does, sheet.units))
  const paced = (all: readonly string[]) => all.filter((text) => /a second|rest \d|turn of the dial in/.test(text))
  expect(paced(does([])).length).toBeGreaterThanOrEqual(4)
  expect(paced(does(['rpm']))).toEqual([])
  expect(does(['rpm'])).toContain('in past 0, to 72')
  expect(does(['rpm'])).toContain('toward the headstock to 17')
})
