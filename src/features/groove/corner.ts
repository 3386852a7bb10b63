import type { Prose } from '../../phrase/phrase.ts'
import { exact, say } from '../../phrase/say.ts'
import type { SquareTool } from '../../tools/tool.ts'
import type { Length } from '../../units/length.ts'
import type { Bench, Refusal } from '../draft.ts'
import type { GrooveFeature } from '../feature.ts'
import { belowMeasuring } from '../shop.ts'

/**
 * The fillets between walls and floor: their radius, and whether the tool must step along them because its own corners
 * are sharper. pm.
 */
export type Fillets = {
  readonly radius: Length
  /**
   * The sharpest and the roundest corner that the drawing allows; if the drawing gives none, from sharp to what the
   * tool leaves.
   */
  readonly between: readonly [sharpest: Length, roundest: Length]
  readonly stepped: boolean
  readonly notes: readonly Prose[]
}

/**
 * The tool's own corners if the drawing allows them; if they are sharper than allowed, the drawing's aim, cut step by
 * step; if they are rounder, a refusal.
 */
export function filletsOf(
  bench: Bench,
  feature: GrooveFeature,
  tool: SquareTool,
  groove: { readonly width: Length; readonly depth: Length },
): Fillets | Refusal {
  const drawn = feature.cornerRadius
  const own = tool.cornerRadius
  const show = (length: Length) => exact('drawing', length, bench.units)
  if (2 * own > tool.width.aim)
    return {
      code: 'corners-too-round',
      reason: say`two corners of ${show(own)} do not fit the edge of tool "${tool.name}", ${show(tool.width.aim)} wide`,
      remedy: 'measure the tool again',
    }
  if (drawn === null) {
    const notes =
      own > 0 ? [say`The corners of the floor carry the tool's radius, ${show(own)}; the drawing gives none.`] : []
    return { radius: own, between: [0, own], stepped: false, notes }
  }
  const [low, high] = drawn.limits ?? [drawn.aim - belowMeasuring, drawn.aim + belowMeasuring]
  const most = drawn.limits?.[1] ?? drawn.aim
  if (own > high)
    return {
      code: 'corner-too-round',
      reason: say`the corners of tool "${tool.name}" are rounded to ${show(own)}, the drawing allows ${show(most)}`,
      remedy: say`stone the corners to ${show(most)} or less`,
    }
  if (own >= low)
    return (
      noRoom(bench, tool, groove, own) ?? {
        radius: own,
        between: [Math.min(low, own), Math.max(high, own)],
        stepped: false,
        notes: [],
      }
    )
  return noRoom(bench, tool, groove, drawn.aim) ?? stepped(bench, tool, drawn.aim)
}

function stepped(bench: Bench, tool: SquareTool, radius: Length): Fillets {
  const show = (length: Length) => exact('drawing', length, bench.units)
  const corners = tool.cornerRadius > 0 ? say`rounded to ${show(tool.cornerRadius)}` : 'sharp'
  return {
    radius,
    between: [radius, radius],
    stepped: true,
    notes: [
      say`The corners of the tool are ${corners}, the fillets ${show(radius)}: the tool steps along the fillet on the tailstock side, feeds across the floor, and steps along the fillet on the headstock side.`,
    ],
  }
}

/**
 * Both fillets must fit between the walls and under the surface, and the tool between the places where they meet the
 * floor.
 */
function noRoom(
  bench: Bench,
  tool: SquareTool,
  { width, depth }: { readonly width: Length; readonly depth: Length },
  radius: Length,
): Refusal | null {
  const show = (length: Length) => exact('drawing', length, bench.units)
  if (radius > depth || 2 * radius > width)
    return {
      code: 'no-solution',
      reason: say`fillets of ${show(radius)} do not fit a groove ${show(width)} wide and ${show(depth)} deep`,
      remedy: 'correct the corner radius, the width or the depth',
    }
  const widest = width - 2 * (radius - tool.cornerRadius)
  if (tool.width.aim <= widest) return null
  return {
    code: 'too-wide-to-step',
    reason: say`tool "${tool.name}" measures ${show(tool.width.aim)}: between fillets of ${show(radius)} it does not come down to the floor`,
    // Down to what can be measured on a tool.
    remedy: say`take a tool ${show(Math.floor(widest / belowMeasuring) * belowMeasuring)} wide or less, or round its corners to ${show(radius)}`,
  }
}
