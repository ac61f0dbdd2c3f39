import type { InciPart } from '../materials/composition';
import type { Material, MaterialContent } from '../materials/material';
import { MATERIAL } from '../materials/noun';
import { tradeNameKey } from '../materials/nested';
import { joinStates } from '../merging/join';
import { same } from '../record/same';
import type { Noun } from '../record/noun';

/** What a material was called before it was joined with another, as its notes keep it. */
function formerName({ tradeName, code }: Pick<Material, 'tradeName' | 'code'>): string {
  return `Joined with “${tradeName}”${code === '' ? '' : ` (${code})`}.`;
}

/** What is kept of two materials that are one: what the first says, what it does not say from the other, all offers and papers. */
export function joinedMaterial(kept: MaterialContent, other: MaterialContent): MaterialContent {
  const noun = MATERIAL as unknown as Noun<object>;
  const { content } = joinStates(noun, { base: null, ours: kept, theirs: other }, 'ours');
  const joined = content as MaterialContent;
  const offers = [
    ...kept.offers,
    ...other.offers.filter((one) => !kept.offers.some((own) => same(own, one))),
  ];
  const notes = [joined.notes, formerName(other)].filter(Boolean).join('\n');
  const { composition, status, tradeName, code } = kept;
  return MATERIAL.read({ ...joined, composition, status, tradeName, code, offers: offers.slice(-60), notes });
}

/** A composition that names one material by another trade name from now on. */
export function renamedParts(parts: readonly InciPart[], from: string, to: string): InciPart[] {
  const key = tradeNameKey(from);
  return parts.map((part) => (tradeNameKey(part.inci) === key ? { ...part, inci: to } : part));
}

/** A content with one material in the place of another, wherever it names it. */
export function withOtherMaterial<C extends object>(content: C, from: string, to: string): C {
  return JSON.parse(JSON.stringify(content).replaceAll(`"${from}"`, `"${to}"`)) as C;
}
