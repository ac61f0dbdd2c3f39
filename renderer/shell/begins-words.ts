import { foldedWords } from '@core/quantities/fold';

/** Whether every word typed begins a word of the text, case and accents aside. */
export function beginsWords(text: string, typed: string): boolean {
  const words = foldedWords(text);
  return foldedWords(typed).every((part) => words.some((word) => word.startsWith(part)));
}
