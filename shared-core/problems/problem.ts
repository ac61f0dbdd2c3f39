/** What went wrong, as a stable code that the screens and the tests can rely on. */
export const PROBLEM_CODES = [
  'invalid-input',
  'not-found',
  'in-use',
  'conflict',
  'not-allowed',
  'key-needed',
  'too-large',
  'no-library',
  'library-locked',
  'library-damaged',
  'library-newer',
  'library-not-one',
  'library-missing',
  'library-changed-outside',
  'library-read-only',
  'disk-full',
  'disk-error',
  'unprintable-text',
  'infeasible',
  'cancelled',
  'internal',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

/** One field at fault: where it is (`phases.0.lines.2.ppm`) and what is wrong with it, for a maker. */
export interface FieldProblem {
  path: string;
  message: string;
}

export interface ProblemParts {
  code: ProblemCode;
  /** What happened, in one plain sentence. */
  title: string;
  /** What to do about it, and what is safe meanwhile. */
  advice: string;
  fields?: FieldProblem[];
  /** Facts a screen may use, such as where a material is used. */
  facts?: Record<string, unknown>;
}

/** An expected failure that a maker can act on. Bugs stay ordinary errors. */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly advice: string;
  readonly fields: FieldProblem[];
  readonly facts: Record<string, unknown>;

  constructor(parts: ProblemParts, options?: ErrorOptions) {
    super(parts.title, options);
    this.name = 'Problem';
    this.code = parts.code;
    this.advice = parts.advice;
    this.fields = parts.fields ?? [];
    this.facts = parts.facts ?? {};
  }
}
