import type { Region } from '../locale/numbers';
import { capital, joined } from '../locale/words';
import type { MaterialContent } from './material';
import { usageWords } from './words';

/** What a material is best for, in a line, from its recorded functions, emulsion type, body and usage. */
export function bestUse(material: MaterialContent, region: Region): string {
  const { functions, emulsionType, body, needsNeutralising, coldProcessable, phaseOfUse } = material;
  const serves =
    emulsionType === 'both' ? 'o/w and w/o emulsions' : emulsionType ? `${emulsionType} emulsions` : '';
  const what = joined(functions) || (phaseOfUse && phaseOfUse !== 'any' ? `${phaseOfUse} phase` : '');
  return capital(
    [
      serves ? `${what || 'emulsifier'} for ${serves}` : what,
      body === 'strong'
        ? 'builds body'
        : body === 'some'
          ? 'some body'
          : body === 'none'
            ? 'for fluid textures'
            : '',
      needsNeutralising ? 'needs neutralising' : '',
      coldProcessable ? 'cold-processable' : '',
      usageWords(material.usage, region),
    ]
      .filter(Boolean)
      .join('; '),
  );
}
