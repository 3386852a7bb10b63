import { joined, type Markup, tag } from '../markup.ts'

/** A page in one file that asks nobody for anything. `allowed`: the content security policy, what it may run and load. */
export const documentOf = (title: string, allowed: string, style: Markup, body: Markup): string => {
  const page = tag(
    'html',
    { lang: 'en-US' },
    tag(
      'head',
      {},
      tag('meta', { charset: 'utf-8' }),
      tag('meta', { 'http-equiv': 'Content-Security-Policy', content: allowed }),
      tag('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      tag('title', {}, title),
      style,
    ),
    body,
  )
  return `<!DOCTYPE html>\n${joined(page)}\n`
}
