import { defineConfig } from 'vitest/config'
import { nativeModules } from './build/native.mjs'
import { CAMPAIGN } from './runs.ts'

/**
 * A test fails by what it finds, never by how busy the machine is: the time only ends one that hangs. Left alone, one core would be kept free,
 * which on two cores is half the speed. Nothing in the program keeps a state, so test files may share the modules that a worker has loaded.
 */
export default defineConfig({
  plugins: [await nativeModules()],
  test: {
    testTimeout: CAMPAIGN ? 5_400_000 : 60_000,
    hookTimeout: 120_000,
    maxWorkers: '100%',
    isolate: false,
    expect: { requireAssertions: true },
  },
})
