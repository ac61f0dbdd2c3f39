import type { TermKey } from '@core/glossary/glossary';
import { kindOfSheet } from './kind';

export const glossary = kindOfSheet<'glossary', readonly TermKey[]>('glossary', {
  read: (_library, request) => ({ subject: request.terms, name: [] }),
  async setting() {
    const { glossarySheet } = await import('@core/sheets/glossary-sheet');
    return glossarySheet;
  },
});
