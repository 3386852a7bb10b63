import { describe, expect, it } from 'vitest'
import { warningProblems } from '../../src/cli/report.ts'
import { compile } from '../../src/compile.ts'
import { printDiagnostics } from '../../src/diagnostics/frame.ts'
import { LATHE, loadFrom, type Shop, TOOLBOX } from './reading.ts'

/** The top of the neck tool is level, so that nothing is to be said of its rake. */
const LEVEL = TOOLBOX.replace('rake-ground: 0', 'rake-ground: -14 1/2 deg')

const shopOf = (job: string, toolbox = LEVEL): Shop => ({
  'job.yaml': job,
  'lathe.yaml': LATHE,
  'toolbox.yaml': toolbox,
})

const BAR = `title: Press pin
units: inch
part: { material: mild steel, held: chuck, diameter: 1.500, length: 5, overhang: 3 }
lathe: lathe.yaml
tools: toolbox.yaml
features:
  - { kind: groove, name: Ring, near: 1, width: 5/32 ±0.005, depth: 0.070, tool: neck }
`
const warned = (shop: Shop) => {
  const { plan, diagnostics, sources } = compile('job.yaml', loadFrom(shop))
  expect(diagnostics).toEqual([])
  return {
    plan: plan!,
    codes: plan!.warnings.map(({ code }) => code),
    text: printDiagnostics(warningProblems(plan!), sources),
  }
}

describe('a plain job', () => {
  it('is warned of nothing', () => {
    expect(warned(shopOf(BAR))).toMatchObject({ codes: [], text: '' })
  })
})

describe('every warning stands where it can be mended, with its remedy', () => {
  it.each([
    {
      code: 'slender',
      shop: shopOf(BAR.replace('1.500, length: 5, overhang: 3', '1.000, length: 5, overhang: 4')),
      says: /^job\.yaml:3:82: warning: The work sticks out 4\.0 diameters without a center\n[\s\S]*remedy: .*use a center or less overhang/,
    },
    {
      code: 'wide-contact',
      shop: shopOf(
        BAR.replace('1.500', '0.550').replace('overhang: 3', 'overhang: 1.5').replace('near: 1,', 'near: 0.5,'),
      ),
      says: /^toolbox\.yaml:1:7: warning: Ring: At full depth \.148 of the edge is in the work at once; \.138 is a quarter of the diameter\n[\s\S]*remedy: take the last of it in light cuts; if it chatters, in this order: less speed, then more feed, less overhang, an edge honed afresh, snug gibs/,
    },
    {
      code: 'small-core',
      shop: shopOf(
        BAR.replace('1.500', '0.600').replace('overhang: 3', 'overhang: 1.5').replace('0.070', '0.210'),
        LEVEL.replace('0.125', '0.240'),
      ),
      says: /^job\.yaml:7:5: warning: Ring: Only \.180 of the diameter is left at the bottom\n[\s\S]*remedy: .*light cuts/,
    },
    {
      code: 'long-bit',
      shop: shopOf(BAR.replace('0.070', '0.300'), LEVEL.replace('0.125', '0.320')),
      says: /^toolbox\.yaml:1:67: warning: Ring: The bit sticks out \.3\d\d at the least, more than its own \.3125: it springs\n[\s\S]*remedy: take a thicker bit/,
    },
    {
      code: 'pulls-in',
      shop: shopOf(BAR.replace('mild steel', 'brass'), TOOLBOX),
      says: /^toolbox\.yaml:1:7: warning: Ring: Positive rake in this material can pull the slide forward through its lost motion\n[\s\S]*remedy: snug the gibs, grind the top so that the rake in use is 0/,
    },
    {
      // Common practice, no source: steel is formed with 0° to 2° of rake.
      code: 'much-rake',
      shop: shopOf(BAR, TOOLBOX),
      says: /^toolbox\.yaml:1:7: warning: Ring: 14° 30' of rake in use, where this metal is formed with 2° at most\n[\s\S]*remedy: .*level the top of the tool/,
    },
    {
      code: 'other-units',
      shop: shopOf(BAR.replace('units: inch', 'units: mm').replace('0.070', '0.1')),
      says: /^job\.yaml:3:7: warning: The part is 1\.50 in diameter and 5\.00 long in millimeters\n[\s\S]*remedy: is units: mm right\?/,
    },
    {
      code: 'other-units',
      shop: shopOf(
        BAR.replace('1.500, length: 5, overhang: 3', '25.4, length: 100, overhang: 75').replace(
          'near: 1,',
          'near: 12,',
        ),
      ),
      says: /^job\.yaml:3:7: warning: The part is 25\.400 in diameter and 100\.000 long in inches\n[\s\S]*remedy: is units: inch right\?.*write units: mm/,
    },
    {
      code: 'cusp-unused',
      shop: shopOf(BAR.replace('tool: neck', 'cusp: 0.001, tool: neck')),
      says: /^job\.yaml:7:\d+: warning: Ring: cusp: is given, but nothing in this plan steps along an arc\n[\s\S]*remedy: .*leave it out/,
    },
    {
      code: 'rests-on-the-eye',
      shop: shopOf(BAR.replace('5/32 ±0.005', '3/16').replace('tool: neck', 'side-feed: lines, tool: neck')),
      says: /^job\.yaml:7:5: warning: Ring: The carriage is brought to the lines by eye, .*No limit of the drawing rests on that\n[\s\S]*remedy: by an indicator/,
    },
    {
      code: 'tool-to-grind',
      shop: shopOf(BAR.replace(', tool: neck', '')),
      says: /^job\.yaml:7:5: warning: Ring: The tool is still to be ground\n[\s\S]*remedy: measure it and enter/,
    },
  ])('$code', ({ code, shop, says }) => {
    const { codes, text } = warned(shop)
    expect(codes).toContain(code)
    expect(text).toMatch(new RegExp(says.source.replace(/^\^/, ''), 'm'))
  })
})

describe('what stays silent', () => {
  it('slender work between centers, brass without rake, a bit thick enough', () => {
    const centers = BAR.replace('held: chuck, diameter: 1.500', 'held: between centers, diameter: 1.000').replace(
      ', overhang: 3',
      '',
    )
    expect(warned(shopOf(centers)).codes).toEqual([])
    const flat = TOOLBOX.replace('14 1/2 deg', '0')
    expect(warned(shopOf(BAR.replace('mild steel', 'brass'), flat)).codes).toEqual([])
    const thick = LEVEL.replace('0.125', '0.320').replace('5/16', '3/8')
    expect(warned(shopOf(BAR.replace('0.070', '0.300'), thick)).codes).toEqual([])
  })
})
