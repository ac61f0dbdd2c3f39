/** Whether a product stays on the body or is washed off. */
export const USES = ['leave-on', 'rinse-off'] as const;
export type Use = (typeof USES)[number];
