/** What a material asks for besides the cautions of every sheet. `source` null: common practice, no source. */
export type Care = {
  readonly coolant: Said
  readonly cautions: readonly Said[]
}
type Said = { readonly says: string; readonly source: string | null }

/** By the name that the job gives it: a material with a cutting speed of its own counts as well. */
export const careFor = (material: string): Care => ({
  coolant: COOLANTS.find(({ of }) => of.test(material)) ?? UNKNOWN,
  cautions: CAUTIONS.filter(({ of, not }) => of.test(material) && not?.test(material) !== true).slice(0, MOST),
})

/** No material has more than two of them; a name that runs through all of them is not one. */
const MOST = 2

type Row = Said & { readonly of: RegExp; readonly not?: RegExp }

const ARMY_PARTING = 'US Army subcourse OD1645, Lathe Operations, cutting off'
const WAR_DEPARTMENT = 'War Department lathe manual (TM 1-420 period), paragraphs 32-33'
const MAGNESIUM = 'T.O. 1-1A-9 / TM 43-0106, magnesium machining safety'

const MAGNESIUM_NAMES = /\bmagnes|\baz ?(31|61|63|80|81|91)|\bzk ?60/i
const BERYLLIUM_NAMES = /beryl|\bbecu\b|\bc17[0-9]/i
const WOODS =
  /\b(wood|oak|beech|birch|mahogany|teak|walnut|ash|maple|cherry|pine|fir|spruce|larch|cedar|yew|oleander|iroko|mansonia|obeche|greenheart|locust|ebony|hornbeam|elm|poplar|apple|pear|plum|lignum vitae|cocobolo)\b|\w+wood\b/i
const CAST_IRON = /\b(cast|gray|grey|ductile|chilled) ?-?\w* ?iron|iron cast/i

/** The first that fits. War Department text: iron castings and brass dry, all else wet with cutting oil, ferrous metals above all. */
const COOLANTS: readonly Row[] = [
  { of: MAGNESIUM_NAMES, says: 'cut dry, or mineral oil; never water', source: MAGNESIUM },
  { of: CAST_IRON, says: 'cut dry', source: `${ARMY_PARTING}; ${WAR_DEPARTMENT}` },
  { of: /steel/i, says: 'drip cutting oil', source: `${ARMY_PARTING}; ${WAR_DEPARTMENT}` },
  { of: BERYLLIUM_NAMES, says: 'keep it wet with cutting oil', source: WAR_DEPARTMENT },
  { of: /brass/i, says: 'cut dry', source: WAR_DEPARTMENT },
  { of: /bronze|gunmetal|lead|babbitt|white ?metal/i, says: 'cut dry', source: null },
  { of: /titanium|alumin|copper|stainless|\biron\b/i, says: 'drip cutting oil', source: WAR_DEPARTMENT },
  { of: WOODS, says: 'cut dry', source: null },
]
const UNKNOWN: Said = { says: 'coolant as the supplier of the material says', source: null }

const NIOSH_WOOD = 'NIOSH Pocket Guide, wood dust'

const CAUTIONS: readonly Row[] = [
  {
    of: /titanium|\bti-?6al/i,
    says: 'Titanium chips burn: sharp tool, clear them away often; Class D powder or dry sand at hand, NEVER water on them.',
    source: 'DOE-HDBK-1081-94; French accident database, record 43330; 29 CFR 1910.157(d)(6)',
  },
  {
    of: MAGNESIUM_NAMES,
    says: 'Magnesium chips burn: sharp tool, never rub or rest in the cut; Class D powder or dry sand at hand, NEVER water, foam or another extinguisher; chips dry, in a covered metal bin.',
    source: MAGNESIUM,
  },
  {
    of: BERYLLIUM_NAMES,
    says: 'Beryllium dust can harm the lungs for good: keep it wet, no dry stone, grinding, polishing or brushing, no compressed air; wash.',
    source: "29 CFR 1910.1024 Appendix A, Table A.1; alloy maker's health-hazard sheet",
  },
  {
    of: /\blead(ed)?\b|babbitt|white ?metal|\b12l1/i,
    says: 'Lead dust is poison: no food or smoking here, no compressed air, wash before you eat.',
    source: '29 CFR 1910.1025, from memory',
  },
  {
    of: CAST_IRON,
    says: 'Cast-iron grit: cover the ways near the cut, wipe it off; no compressed air.',
    source: '29 CFR 1910.242(b); common practice',
  },
  {
    of: /\b(oak|beech)\b/i,
    says: 'Dust of oak and beech causes cancer: draw it off, or wear a mask.',
    source: `OSHA Chemical Sampling Information, wood dust; ${NIOSH_WOOD}`,
  },
  {
    of: /\bcedar\b/i,
    says: 'Cedar dust causes asthma: draw it off, or wear a mask.',
    source: `OSHA wood dust topic page; ${NIOSH_WOOD}`,
  },
  {
    of: /\b(yew|oleander)\b/i,
    says: 'Yew and oleander are poison, their dust too: draw it off, wear a mask, wash.',
    source: `${NIOSH_WOOD}; wood toxicity chart, American Woodturner, June 1990`,
  },
  {
    of: WOODS,
    not: /\b(oak|beech|cedar|yew|oleander)\b/i,
    says: 'Wood dust irritates skin and lungs: draw it off, or wear a mask.',
    source: NIOSH_WOOD,
  },
]
