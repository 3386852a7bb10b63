import { printCheckJunit } from './check.ts'

export const printers = { check: printCheckJunit }
