/** What a maker's table may hold. */
export const SUBJECTS = ['materials', 'formulas', 'limits'] as const;
export type Subject = (typeof SUBJECTS)[number];

/** What its records are called, one and many. */
export const SUBJECT_WORDS: Readonly<Record<Subject, { one: string; many: string }>> = {
  materials: { one: 'material', many: 'materials' },
  formulas: { one: 'formula', many: 'formulas' },
  limits: { one: 'limit', many: 'limits' },
};
