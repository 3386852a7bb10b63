import * as z from 'zod/mini'
import { angle, byDefault, choice, length } from '../units/measure-schema.ts'

/** Keys that every shape of tool has besides its own sizes. */
export const commonToolKeys = {
  blank: z.optional(length('Width of the tool bit behind the ground edge.', '5/16')),
  'edge-offset': byDefault(
    'the edge is in the middle of the blank',
    length('From the tailstock-side face of the blank to the edge.', 0.251, 'zero or more'),
  ),
  bit: byDefault(
    'hss',
    choice('What the tool is made of; carbide turns at twice the speed of the table.', ['hss', 'carbide']),
  ),
  'holder-angle': byDefault('0', angle('Degrees by which the holder tilts the bit up.', '14 1/2', -45, 45)),
  'rake-ground': byDefault('0', angle('Rake ground on the bit, degrees; the holder angle is added to it.', 5, -45, 45)),
  'rake-in-use': byDefault(
    'rake-ground and holder-angle together',
    angle('Rake as it stands to the work, degrees; instead of rake-ground.', 10, -45, 45),
  ),
}

export const reach = () => length('How deep the ground edge can go before the blank touches.', 0.14)
