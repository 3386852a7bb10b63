import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { printDiagnostics } from '../../src/diagnostics/frame.ts'
import { readSource } from '../../src/source/read-source.ts'

const BITS =
  `a|b: |- |\n|  |{|}|[|]|,|"|'|\\u202e|&x |*x|!t |? |: |#|%YAML 1.1\n|---\n|...\n|\t|1|.5|/|\r|\r\n|\u0000|é|溝|🔧`.split(
    '|',
  )
const text = fc
  .array(fc.constantFrom(...BITS, '|', '>', '__proto__: ', '<<: ', '@', '`', '~'), { maxLength: 25 })
  .map((bits) => bits.join(''))

test('whatever is in a file, it gives data or diagnostics, each at a place that exists, and prints without controls', () => {
  fc.assert(
    fc.property(text, (content) => {
      const source = readSource(content, 'job.yaml')
      const lines = source.text.split('\n')
      expect(source.data === undefined && source.diagnostics.length === 0).toBe(false)
      for (const { span, hint } of source.diagnostics) {
        const line = lines[(span?.line ?? 0) - 1]
        expect(line).toBeDefined()
        expect(span?.column).toBeGreaterThan(0)
        expect(span?.column).toBeLessThanOrEqual((line as string).length + 1)
        expect(hint).toBeTruthy()
      }
      expect(printDiagnostics(source.diagnostics, new Map([['job.yaml', source]]))).not.toMatch(/[^\P{C}\n]/u)
    }),
    { seed: 19, numRuns: 2000 },
  )
})

test('bytes and text read the same', () => {
  fc.assert(
    fc.property(text, (content) => {
      const fromBytes = readSource(new TextEncoder().encode(content), 'job.yaml')
      const { data, diagnostics } = readSource(content, 'job.yaml')
      expect({ data: fromBytes.data, diagnostics: fromBytes.diagnostics }).toEqual({ data, diagnostics })
    }),
    { seed: 20, numRuns: 500 },
  )
})

test('bytes that mean nothing never throw', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
      const source = readSource(bytes, 'job.yaml')
      expect(source.data === undefined && source.diagnostics.length === 0).toBe(false)
    }),
    { seed: 21, numRuns: 1000 },
  )
})
