import { badInput } from '../working/inputs';
import { unreadable } from './smiles-fault';

const LONGEST = 4000;

/**
 * A SMILES trimmed and checked for what no substance's SMILES holds.
 *
 * @throws Problem `invalid-input` for an empty or overlong text, a reaction, or brackets that do not pair
 */
export function checkSmilesText(smiles: string): string {
  const text = smiles.trim();
  const refuse = (why: string, advice: string) => unreadable(text, why, advice);
  if (text === '') throw badInput('There is no SMILES.', 'Enter the structure’s SMILES.', 'smiles');
  if (text.length > LONGEST)
    throw refuse(`it is longer than ${LONGEST} characters`, 'Enter a polymer by its figures instead.');
  if (/\s/.test(text)) throw refuse('it holds a space', 'Enter the SMILES alone, without a name.');
  if (text.includes('>')) throw refuse('it is a reaction', 'Enter one substance.');
  if (text.includes('*')) throw refuse('it holds a wildcard (*)', 'Write the atoms that it stands for.');
  if (!bracketsPair(text)) throw refuse('its brackets do not pair', 'Check each bracket.');
  return text;
}

function bracketsPair(text: string): boolean {
  const open: string[] = [];
  for (const mark of text) {
    if (mark === '(' || mark === '[') open.push(mark);
    else if (mark === ')' && open.pop() !== '(') return false;
    else if (mark === ']' && open.pop() !== '[') return false;
  }
  return open.length === 0;
}
