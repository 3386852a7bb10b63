/** Growth of a metal when it is warmed, in millionths of its length a degree Celsius; null if it is in no table here. */
export const expansionOf = (material: string): number | null => {
  const row = ROWS.find(({ of }) => of.test(material))
  return row === undefined ? null : row.growth
}

const NIST = 'Swyt, Uncertainties in dimensional measurements, J. Res. NIST 99 (1994) 31'
const CALLISTER = 'Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6'

/** The first that fits. */
const ROWS: readonly { readonly of: RegExp; readonly growth: number; readonly source: string }[] = [
  { of: /alumin/i, growth: 23.1, source: NIST },
  { of: /titanium/i, growth: 8.6, source: CALLISTER },
  // 5.56 millionths a degree Fahrenheit.
  { of: /cast iron|\biron\b/i, growth: 10, source: 'Dooley, Applied Science for Metal Workers, expansion of metals' },
  { of: /brass/i, growth: 20.5, source: CALLISTER },
  { of: /bronze|gunmetal/i, growth: 18, source: CALLISTER },
  { of: /(?<!stainless )steel/i, growth: 11.5, source: NIST },
]
