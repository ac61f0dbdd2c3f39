import { Problem } from '@core/problems/problem';

/** What a host says of an error, in its own window or terminal. */
export interface ErrorWords {
  message: string;
  detail: string;
}

/** A Problem's own words; for a bug, that it is one, with what there is to tell. */
export function errorWords(error: unknown): ErrorWords {
  if (error instanceof Problem) return { message: error.message, detail: error.advice };
  return { message: 'Stillroom met an error of its own.', detail: String(error) };
}
