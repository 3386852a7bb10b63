/** As it is read on a phone by the lathe, on a screen, and on paper. Black on white, ruled like the title block of a drawing. */
export const styleFor = (title: string): string => `${ON_SCREEN}${onPaper(title)}`

const ON_SCREEN = `
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0 auto;padding:1rem;max-width:60rem;background:#fff;color:#000;font:1rem/1.4 Arial,Helvetica,sans-serif;overflow-wrap:anywhere}
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
figure svg{display:block;max-width:none}
.faces{display:flex;flex-wrap:wrap;gap:.75rem 1rem}
.faces figure{flex:none;max-width:100%}
.step{border-bottom:1px solid #bbb;padding:.35rem 0}
.step label{display:grid;grid-template-columns:2rem 3.2rem 1fr;column-gap:.5rem;align-items:baseline;cursor:pointer}
.thing{font-weight:bold}
.does{grid-column:3}
.number{text-align:right;font-weight:bold}
.effect{display:inline-block;padding-left:.75rem;color:#333}
.reading{font-size:1.5rem;line-height:1.2}
.more{margin:.15rem 0 .25rem 6.2rem;padding:0 0 0 1rem}
.see{margin:.1rem 0 0 6.2rem;padding:0;font-size:.9rem}
.see a{margin-right:1rem}
input[type=checkbox]{appearance:none;-webkit-appearance:none;width:1.6rem;height:1.6rem;margin:0;border:2px solid #000;background:#fff;font:bold 1.3rem/1.3rem Arial,Helvetica,sans-serif;text-align:center;align-self:start;cursor:pointer}
input[type=checkbox]:checked::before{content:"\\2713"}
input:focus-visible,button:focus-visible,a:focus-visible,figure:focus-visible{outline:3px solid #000;outline-offset:2px}
.blank{width:6.5rem;height:1.6rem;vertical-align:bottom;border:0;border-bottom:1px solid #000;border-radius:0;padding:0;background:none;font:inherit;font-size:1.25rem;line-height:1}
.done label .does,.done label .thing{color:#555}
button{font:inherit;font-weight:bold;border:2px solid #000;background:#fff;color:#000;padding:.6rem 1rem;min-height:3rem;cursor:pointer}
.bar{position:sticky;bottom:0;display:flex;flex-wrap:wrap;gap:.5rem;background:#fff;padding:.5rem 0;border-top:2px solid #000}
[hidden]{display:none!important}
#next{position:fixed;inset:0;background:#fff;display:flex;flex-direction:column;padding:1rem;z-index:1}
#now{flex:1;overflow:auto;font-size:1.5rem}
#now .step{border:0}
#now .step label{grid-template-columns:2.5rem auto 1fr}
#now .thing{grid-column:3}
#now .does{grid-column:1/-1;margin-top:.75rem}
#now .reading{font-size:3.5rem}
#now .effect{display:block;padding:.5rem 0 0}
#now .more{margin-left:0;padding-left:1.5rem}
#now .see{display:none}
#next .keys{display:grid;grid-template-columns:1fr 1fr 2fr;gap:.5rem}
@media (min-width:700px){.step label{grid-template-columns:2rem 3.6rem 8rem 1fr}.does{grid-column:4}.more,.see{margin-left:15.1rem}}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
`

const onPaper = (title: string): string => `
@page{margin:16mm 13mm;@top-left{content:${inQuotes(title)};font:11pt Arial,Helvetica,sans-serif}@bottom-right{content:"page " counter(page) " of " counter(pages);font:11pt Arial,Helvetica,sans-serif}}
@media print{
html{font-size:11pt}
body{max-width:none;padding:0;font-size:11pt}
h2{margin-top:1.2rem}
h2,h3{break-after:avoid}
.step,.begins,.facts>div,figure,tr,li,.cautions,.warning,header{break-inside:avoid}
.back{break-before:page}
.back~.back{break-before:auto}
.bar,#next,.see{display:none!important}
.step{padding:.15rem 0}
.step label{grid-template-columns:1.6rem 3.2rem 8rem 1fr}
.does{grid-column:4}
.more{margin-left:13.5rem}
.see,.note{font-size:11pt}
.reading{font-size:14pt}
.blank{font-size:11pt;width:9rem}
input[type=checkbox]{width:4.5mm;height:4.5mm;border-width:.4mm;font-size:10pt;line-height:4mm}
figure{overflow:visible;margin:.4rem 0}
figure svg{max-width:100%}
.faces{gap:.4rem 4mm}
.effect{color:#000}
}
`

/** Text in a style sheet: every sign that is no letter, figure or blank by its number, so that nothing ends the text or the sheet. */
const inQuotes = (text: string): string =>
  `"${[...text].map((sign) => (/[A-Za-z0-9 ]/.test(sign) ? sign : `\\${sign.codePointAt(0)!.toString(16)} `)).join('')}"`
