/** The shapes that a tool may have. All that is to be known of one stands in its folder under `tools/`. */
export type Shape = 'square' | 'vee' | 'round' | 'corner'
