import type { SheetFeature } from '../../sheet/sheet.ts'

/** As it is read on a phone by the lathe, on a screen, and on paper. Black on white, ruled like the title block of a drawing. */
export const styleFor = (title: string, features: readonly SheetFeature[]): string =>
  `${ON_SCREEN}${onPaper(title, features)}`

const FONT = 'Arial,Helvetica,sans-serif'

const ON_SCREEN = `
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0 auto;padding:1rem;max-width:60rem;background:#fff;color:#000;font:1rem/1.4 ${FONT};overflow-wrap:anywhere}
h1{margin:0;font-size:1.75rem;line-height:1.2}
h2{display:flex;justify-content:space-between;gap:1rem;margin:2.5rem 0 .75rem;border-top:3px solid #000;border-bottom:1px solid #000;padding:.35rem 0;font-size:1.3rem}
h2 span:first-child::first-letter{text-transform:uppercase}
h3{margin:1.5rem 0 .4rem;font-size:1.05rem}
h3::first-letter{text-transform:uppercase}
h1,h2,h3,td,dd,li,p,.does{unicode-bidi:plaintext}
header{border:2px solid #000;padding:.6rem .75rem}
.block{display:flex;flex-wrap:wrap;gap:.25rem 2rem;margin:.4rem 0 0;font-weight:bold}
.facts{margin:1rem 0}
.facts>div{display:grid;grid-template-columns:7.5rem 1fr;border-bottom:1px solid #bbb;padding:.2rem 0}
dt{font-weight:bold;grid-column:1}
dd{margin:0;grid-column:2}
a{color:inherit}
.cautions{border:2px solid #000;margin:1rem 0;padding:.5rem .75rem .5rem 2rem}
.warning{border-left:6px solid #000;margin:.75rem 0;padding:.2rem .6rem}
.note{margin:.5rem 0}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;margin:.5rem 0;overflow-wrap:normal}
th,td{border-bottom:1px solid #bbb;padding:.25rem .5rem .25rem 0;text-align:left;vertical-align:top}
thead th{border-bottom:2px solid #000}
.under td{padding-left:1.5rem;border-bottom:2px solid #bbb}
figure{margin:.75rem 0;overflow-x:auto}
figure svg{display:block;max-width:100%;height:auto}
.broad svg{min-width:30rem}
.look{display:flex;flex-wrap:wrap;column-gap:1.5rem;align-items:flex-start}
.look>figure{flex:none;max-width:100%}
.look>.facts{flex:1 1 21rem}
.plates{position:absolute;width:0;height:0}
.step{display:grid;grid-template-columns:1fr;border-bottom:1px solid #bbb;padding:.35rem 0}
.step label{display:grid;grid-template-columns:1.8rem 2.2rem 1fr;column-gap:.5rem;align-items:center;cursor:pointer}
.thing{font-weight:bold}
.does{grid-column:3;line-height:1.7}
.number{text-align:right;font-weight:bold;white-space:nowrap}
.effect{display:inline-block;padding-right:.75rem;color:#333}
.effect::before{content:"\\2013\\a0"}
.reading{font-size:2.15rem;line-height:1;white-space:nowrap}
.more{margin:.15rem 0 .25rem 5rem;padding:0 0 0 1rem}
.rows{display:flex;flex-wrap:wrap;margin:.3rem 0;border-left:1px solid #000}
.rows>div{border:1px solid #000;border-left:0;padding:.15rem .5rem;text-align:center;margin-bottom:-1px}
.rows dt{font-weight:normal;border-bottom:1px solid #bbb}
.rows dd{line-height:1.6}
.dials{display:none;margin:.4rem 0 0 5rem}
.dials .dial{display:none;width:8.5rem}
.dials:has(.matters){display:block}
.dials .matters{display:inline-block}
input[type=checkbox]{appearance:none;-webkit-appearance:none;width:1.8rem;height:1.8rem;margin:0;border:2px solid #000;background:#fff;font:bold 1.5rem/1.5rem ${FONT};text-align:center;align-self:start;cursor:pointer}
input[type=checkbox]:checked::before{content:"\\2713"}
input:focus-visible,button:focus-visible,a:focus-visible,figure:focus-visible{outline:3px solid #000;outline-offset:2px}
.blank{width:6.5rem;height:2rem;vertical-align:bottom;border:0;border-bottom:1px solid #000;border-radius:0;padding:0;background:none;font:inherit;font-size:1.5rem;line-height:1}
.done label .does,.done label .thing{color:#555}
button{font:inherit;font-weight:bold;border:2px solid #000;background:#fff;color:#000;padding:.6rem 1rem;min-height:3rem;cursor:pointer}
.bar{position:sticky;bottom:0;display:flex;flex-wrap:wrap;gap:.5rem;background:#fff;padding:.5rem 0;border-top:2px solid #000}
[hidden]{display:none!important}
#next{position:fixed;inset:0;background:#fff;display:flex;flex-direction:column;padding:1rem;z-index:1}
#now{flex:1;overflow:auto;font-size:1.5rem}
#now .step{display:block;border:0}
#now .step label{grid-template-columns:2.5rem auto 1fr}
#now .thing{grid-column:3}
#now .does{grid-column:1/-1;margin-top:.75rem;line-height:1.4}
#now .reading{font-size:4rem}
#now .effect{display:block;padding:.5rem 0 0}
#now .effect::before{content:none}
#now .more{margin-left:0;padding-left:1.5rem}
#now .dials{display:flex;flex-wrap:wrap;gap:1rem;margin:1rem 0 0}
#now .dial{display:block;width:min(20rem,80vw,48vh)}
#now .dial:not(:only-child){width:min(15rem,42vw)}
#next .keys{display:grid;grid-template-columns:1fr 1fr 2fr;gap:.5rem}
@media (max-width:699px){.runs .step .dials{display:none}.runs #now .dials{display:flex}}
@media (min-width:700px){
.step{grid-template-columns:1fr auto;column-gap:1rem}
.step>*{grid-column:1}
.step .dials{grid-column:2;grid-row:1/span 2;margin:0}
.step .swivel{grid-column:2;grid-row:1/span 2;margin:0}
.step .swivel svg{width:18rem}
.step label{grid-template-columns:1.8rem 3.6rem 8rem 1fr;align-items:baseline}
.does{grid-column:4}
.more{margin-left:15rem}
}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
`

const onPaper = (title: string, features: readonly SheetFeature[]): string => `
@page{margin:16mm 13mm;@top-left{content:${inQuotes(title)};font:11pt ${FONT};text-align:left}@bottom-right{content:"page " counter(page) " of " counter(pages);font:11pt ${FONT}}}
${features.map((feature) => ownPages(feature, features.length)).join('\n')}
@media print{
html{font-size:11pt}
body{max-width:none;padding:0;font-size:11pt}
h2{margin-top:1.2rem}
.feature>h2{margin-top:0}
h2,h3{break-after:avoid}
.step,.begins,.facts>div,figure,tr,li,.cautions,.warning,header{break-inside:avoid}
.back{break-before:page}
.back~.back{break-before:auto}
.bar,#next{display:none!important}
.step{grid-template-columns:1fr auto;column-gap:4mm;padding:.15rem 0}
.step>*{grid-column:1}
.step label{grid-template-columns:1.4rem minmax(2rem,max-content) 7.8rem 1fr;align-items:baseline}
.does{grid-column:4;line-height:1.45}
.more{margin:.1rem 0 .15rem 12.7rem}
.more li{break-inside:auto}
.step .dials{grid-column:2;grid-row:1/span 2;margin:0}
.step .dials .dial{width:34mm}
.step .swivel{grid-column:2;grid-row:1/span 2;margin:0}
.step .swivel svg{width:70mm}
.reading{font-size:16pt;line-height:1}
.blank{font-size:11pt;width:9rem;height:6mm}
input[type=checkbox]{width:4.5mm;height:4.5mm;border-width:.4mm;font-size:10pt;line-height:4mm}
figure{overflow:visible;margin:.4rem 0}
figure svg,.broad svg{min-width:0}
.facts{margin:.4rem 0}
.look{column-gap:3mm}
.look>.facts{flex-basis:76mm}
.look dt{font-size:11pt}
.look .facts>div{grid-template-columns:6.3rem 1fr}
.look>.form{max-width:113mm}
.facts>div{padding:.1rem 0}
.cautions{margin:.6rem 0;padding:.3rem .75rem .3rem 2rem}
.effect{color:#000}
}
`

/** A feature begins a page, and its name stands on each of its pages. */
const ownPages = ({ index, kind, name }: SheetFeature, of: number): string => {
  const place = of > 1 ? `${index + 1} of ${of}, ` : ''
  return `@page feature-${index + 1}{@top-right{content:${inQuotes(`${place}${kind}: ${name}`)};font:bold 11pt ${FONT};text-align:right}}
@media print{#feature-${index + 1}{page:feature-${index + 1}}}`
}

/** Text in a style sheet: every sign that is no letter, figure or blank by its number, so that nothing ends the text or the sheet. */
const inQuotes = (text: string): string =>
  `"${[...text].map((sign) => (/[A-Za-z0-9 ]/.test(sign) ? sign : `\\${sign.codePointAt(0)!.toString(16)} `)).join('')}"`
