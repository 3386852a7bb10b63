import { type Child, type Markup, tag } from '../markup.ts'
import { documentOf } from './document.ts'

/** A page to print: no script runs in it, and it asks nobody for anything. */
export const paperPage = (title: string, body: readonly Child[]): string =>
  documentOf(title, ALLOWED, STYLE, tag('body', {}, ...body))

const ALLOWED = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"

const STYLE: Markup = {
  made: `<style>
:root{color-scheme:light}
body{margin:0 auto;padding:1rem;max-width:52rem;background:#fff;color:#000;font:1rem/1.45 Arial,Helvetica,sans-serif;overflow-wrap:anywhere}
h1{margin:0;font-size:1.6rem}
h2{margin:1.5rem 0 .5rem;border-top:3px solid #000;border-bottom:1px solid #000;padding:.3rem 0;font-size:1.2rem}
h3{margin:1rem 0 .3rem;font-size:1rem}
header{border:2px solid #000;padding:.6rem .75rem}
.who{display:flex;flex-wrap:wrap;gap:.5rem 2rem;margin:.6rem 0 0;font-weight:bold}
h1,h2,td,th,p,li,dd,.who span{unicode-bidi:plaintext}
dl>div{display:grid;grid-template-columns:7.5rem 1fr;border-bottom:1px solid #bbb;padding:.2rem 0}
dt{font-weight:bold;grid-column:1}
dd{margin:0;grid-column:2}
.cautions{border:2px solid #000;margin:1rem 0;padding:.5rem .75rem .5rem 2rem}
table{border-collapse:collapse;width:100%;margin:.5rem 0}
th,td{border-bottom:1px solid #bbb;padding:.3rem .5rem .3rem 0;text-align:left;vertical-align:top}
thead th{border-bottom:2px solid #000}
.steps td:first-child{text-align:right;font-weight:bold;width:2.5rem}
.steps td:nth-child(2){font-weight:bold;width:8rem}
.more{display:block;padding-left:1rem}
.group td{border:0;padding-top:1rem;font-weight:bold;text-align:left!important}
.line{white-space:nowrap}
figure{margin:.75rem 0;overflow-x:auto}
@page{margin:14mm}
@media print{html,body{font-size:11pt;max-width:none;padding:0}tr,figure,header,li{break-inside:avoid}h2,h3{break-after:avoid}}
</style>`,
}
