/** What a kind of case comes to: one value, or several by name. */
export type Outcome = number | Record<string, number>;

/** A kind takes a case's raw inputs, checks them, and computes; it throws a `ZodError` or a `Problem`. */
export type Kind = (inputs: unknown) => Outcome;
