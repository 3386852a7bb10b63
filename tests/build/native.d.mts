import type { Plugin } from 'vite'

export const nativeModules: () => Promise<Plugin>
