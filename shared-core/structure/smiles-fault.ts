import type { Problem } from '../problems/problem';
import { badInput } from '../working/inputs';

/** A text cut to a length that fits a message. */
export function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

/** The refusal of a SMILES that does not say what it should. */
export function unreadable(text: string, why: string, advice: string): Problem {
  return badInput(`The SMILES “${shortened(text)}” cannot be read: ${why}.`, advice, 'smiles');
}
