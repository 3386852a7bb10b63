import { defineConfig } from 'vitest/config'

/** A test fails by what it finds, never by how busy the machine is: this only ends one that hangs. */
export default defineConfig({ test: { testTimeout: 60_000 } })
