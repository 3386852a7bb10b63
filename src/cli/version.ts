import manifest from '../../package.json' with { type: 'json' }

export const VERSION_LINE = `groovewright ${manifest.version}`
