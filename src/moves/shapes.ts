/** The shapes that a tool may have. Everything else about a shape is in its folder under `tools/`. */
export type Shape = 'square' | 'vee' | 'round' | 'corner'
