/** The few sizes of a sheet, in points, and its two inks. Greys stay dark enough for a monochrome copier. */
export const SIZE = { title: 18, section: 11, body: 9.5, table: 9, small: 8, label: 7.5 } as const;
export const INK = '#111111';
export const SOFT_INK = '#444444';
export const RULE = '#333333';
export const QUIET_RULE = '#9a9a9a';
