import { describe, expect, it } from 'vitest'
import { CODES, type Code } from '../../src/diagnostics/codes.ts'
import { good, LATHE, mayNotHold, misspelt, refused, runIn } from '../cli/world.ts'
import { parse } from './xml.ts'

const files = {
  'shop/bench.yaml': LATHE,
  'shop/good.yaml': good(),
  'shop/may <&">.yaml': mayNotHold(),
  'shop/misspelt.yaml': misspelt(),
  'shop/refused.yaml': refused(),
}
const checked = async (format: string): Promise<string> => {
  const { status, out } = await runIn({ files }, 'check', 'shop', '--format', format)
  expect(status).toBe(2)
  return out
}

describe('check as SARIF', () => {
  it('has every problem as a result with its rule and its place', async () => {
    const [run] = JSON.parse(await checked('sarif')).runs
    const { driver } = run.tool
    for (const { id, shortDescription } of driver.rules) expect(shortDescription.text).toBe(CODES[id as Code])
    for (const result of run.results) {
      expect(driver.rules[result.ruleIndex].id).toBe(result.ruleId)
      expect(() => new URL(result.locations[0].physicalLocation.artifactLocation.uri, 'file:///shop/')).not.toThrow()
    }
    const found = run.results.map(({ ruleId, level, locations: [{ physicalLocation: at }] }: Result) => [
      ...[ruleId, level, at.artifactLocation.uri, at.region?.startLine],
    ])
    expect(found).toContainEqual(['may-not-hold', 'warning', 'shop/may%20%3C%26%22%3E.yaml', undefined])
    expect(found).toContainEqual(['unknown-key', 'error', 'shop/misspelt.yaml', 8])
    expect(found).toContainEqual(['tool-too-wide', 'error', 'shop/refused.yaml', 8])
  })
})

type Result = {
  ruleId: string
  level: string
  locations: [{ physicalLocation: { artifactLocation: { uri: string }; region?: { startLine: number } } }]
}

describe('check as JUnit', () => {
  it('is XML with a suite for each job, whose counts are those of its cases', async () => {
    const text = await checked('junit')
    expect(() => parse(text)).not.toThrow()
    expect(text).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>\n<testsuites name="groovewright" tests="\d+"/)
    const suites = [
      ...text.matchAll(
        /<testsuite name="([^"]*)" tests="(\d+)" failures="(\d+)" errors="(\d+)" skipped="(\d+)">(.*?)<\/testsuite>/g,
      ),
    ]
    expect(suites.map((suite) => suite.slice(1, 6))).toEqual([
      ['shop/good.yaml', '1', '0', '0', '0'],
      ['shop/may &#60;&#38;&#34;&#62;.yaml', '1', '1', '0', '0'],
      ['shop/misspelt.yaml', '1', '0', '1', '0'],
      ['shop/refused.yaml', '1', '1', '0', '0'],
      ['shop/bench.yaml', '1', '0', '0', '1'],
    ])
    for (const [, , tests, failures, errors, , inside = ''] of suites)
      expect(
        [
          inside.split('<testcase ').length - 1,
          inside.split('<failure ').length - 1,
          inside.split('<error ').length - 1,
        ].map(String),
      ).toEqual([tests, failures, errors])
  })
})
