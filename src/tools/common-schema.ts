import * as z from 'zod/mini'
import { angle, choice, length } from '../units/measure-schema.ts'

/** Keys that every shape of tool has beside its own sizes. */
export const commonToolKeys = {
  blank: z.optional(length('Width of the tool bit behind the edge.')),
  'edge-offset': z.optional(
    length(
      'From the tailstock-side face of the blank to the edge; without it the edge is in the middle.',
      'zero or more',
    ),
  ),
  bit: z.optional(choice('What the tool is made of: hss (the default) or carbide.', ['hss', 'carbide'])),
  'holder-angle': z.optional(angle('Degrees by which the holder tilts the bit up; by default 0.', -45, 45)),
  'rake-ground': z.optional(angle('Rake ground on the bit; the holder angle is added. By default 0.', -45, 45)),
  'rake-in-use': z.optional(angle('Rake as it stands to the work, instead of rake-ground.', -45, 45)),
}

export const reach = (say = 'How deep the ground end can go before the shank touches.') => length(say)
