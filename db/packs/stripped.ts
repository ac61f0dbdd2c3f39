import type { ExchangedState } from '@core/exchange/document';
import { WITHHELD_OF_MATERIALS } from '@core/packs/pack';
import { canonicalText } from '@core/record/canonical';
import { hashOfState } from '../record/state';

/** A state of a material without what is withheld in packs; what is blank is left out of a state. Others as they are. */
export function strippedState({ content, ...state }: ExchangedState): ExchangedState {
  if (state.kind !== 'material') return { content, ...state };
  const kept = Object.fromEntries(
    Object.entries(content).filter(([key]) => !WITHHELD_OF_MATERIALS.includes(key)),
  );
  const { kind, record, format } = state;
  const hash = hashOfState({ kind, record, format, content: canonicalText(kept) });
  return { kind, record, format, content: kept, hash };
}
