import { defineConfig } from 'vitest/config'

/**
 * A test fails by what it finds, never by how busy the machine is: the time only ends one that hangs. Left alone, one core would be kept free,
 * which on two cores is half the speed.
 */
export default defineConfig({ test: { testTimeout: 60_000, maxWorkers: '100%' } })
