import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'
import rows from './cautions.json' with { type: 'json' }

type Row = { material: string; speed?: number; says: string[]; coolant: string; source: string }
type Sheet = { cautions: string[]; steps: { action: string; say: string }[] }

const job = (material: string, held: string): string =>
  [
    'title: Cautions',
    'units: inch',
    `part: { material: ${material}, held: ${held}, diameter: 1, length: 3${held === 'between centers' ? '' : ', overhang: 2'} }`,
    'lathe:',
    '  name: Bench lathe',
    '  cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.008 }',
    '  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.006 }',
    '  spindle-speeds: [60, 150, 380]',
    'tools: { neck: { shape: square, width: 0.125, reach: 0.2 } }',
    'features: [{ kind: groove, near: 0.5, width: 0.130, depth: 0.04, tool: neck }]',
  ].join('\n')

const sheetOf = async (material: string, held = 'chuck'): Promise<Sheet> => {
  const { out, status, err } = await runIn(
    { files: { 'job.yaml': job(material, held) } },
    'sheet',
    'job.yaml',
    '--format',
    'json',
  )
  expect([status, err]).toEqual([0, ''])
  return JSON.parse(out) as Sheet
}

const named = ({ material, speed }: Row): string =>
  speed === undefined ? material : `{ name: ${material}, cutting-speed: ${speed} }`

/** What stands on every sheet of work in a chuck. */
const ALWAYS = 5

describe.each(rows.materials as Row[])('$material', (row) => {
  it('has its own cautions, no others, and its coolant', async () => {
    const { cautions, steps } = await sheetOf(named(row))
    expect(row.source).not.toBe('')
    expect(cautions).toHaveLength(ALWAYS + (row.says.length > 0 ? 1 : 0))
    for (const word of row.says) expect(cautions.join(' ')).toContain(word)
    expect(cautions.at(-1)).toMatch(/manual, the shop's rules, local codes and a qualified supervisor/)
    expect(steps.find(({ action }) => action === 'start')?.say).toContain(row.coolant)
  })
})

it('asks for a key only where there is one', async () => {
  const starts = async (held: string): Promise<string> => {
    const { cautions, steps } = await sheetOf('mild steel', held)
    return [...cautions, ...steps.filter(({ action }) => action === 'start').map(({ say }) => say)].join(' ')
  }
  expect(await starts('chuck')).toMatch(/key out of the chuck.*key out\?/)
  expect(await starts('collet')).toMatch(/collet up tight.*collet tight\?/)
  expect(await starts('collet')).not.toMatch(/\bkey\b|center/)
  expect(await starts('between centers')).toMatch(/Dog tight.*center greased, tailstock locked.*dog free\?/)
  expect(await starts('between centers')).not.toMatch(/\bkey\b/)
  expect(await starts('chuck and center')).toMatch(/Center greased, tailstock locked.*key out of the chuck/)
})

it('has the spindle off and in neutral to touch, and the tool run away before a file comes near', async () => {
  const { steps } = await sheetOf('mild steel')
  expect(steps.find(({ action }) => action === 'touch-off')?.say).toMatch(/power off, in neutral/)
  const at = steps.findIndex(({ action }) => action === 'deburr')
  expect(steps.slice(at - 2, at).map(({ action }) => action)).toEqual(['measure', 'unlock'])
  expect(steps[at - 1]!.say).toMatch(/run the tool well away/)
})

it('warns at the grinder as the general-industry rules do', async () => {
  const { out } = await runIn(
    { files: { 'job.yaml': job('mild steel', 'chuck') } },
    'grind',
    'job.yaml',
    '--format',
    'json',
  )
  const { cautions } = JSON.parse(out) as Sheet
  expect(rows.grinder).toHaveLength(4)
  for (const { says, clause } of rows.grinder)
    expect(
      cautions.some((each) => each.includes(says) && each.includes(clause)),
      says,
    ).toBe(true)
  expect(cautions.join(' ')).toMatch(/no brass, aluminum or other soft metal.*Draw the dust off/)
})
