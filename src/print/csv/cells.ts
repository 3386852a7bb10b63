/** One line of a table. What a spreadsheet would take for a formula stays text. */
export const row = (cells: readonly (string | number)[]): string => `${cells.map(cell).join(',')}\n`

const cell = (value: string | number): string => {
  if (typeof value === 'number') return String(value)
  const text = /^[=+\-@\t\r]/.test(value) && !/^[-+]?[\d.]+$/.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
