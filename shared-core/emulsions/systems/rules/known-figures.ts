import { NEUTRAL, type SystemRule } from '../system';

export const knownFigures: SystemRule = {
  id: 'known-figures',
  name: 'Known HLB values',
  says: 'An estimated or missing HLB makes the ratio a guess.',
  weight: 0.7,
  source: { text: 'published HLB values disagree by 1 to 2 units (reference tables)', basis: 'read' },
  judge({ emulsifiers }) {
    const vague = emulsifiers.filter(
      ({ facts }) =>
        facts.charge === 'non-ionic' &&
        !facts.polymeric &&
        (facts.hlb === null || facts.material.figures.hlb?.provenance === 'estimated'),
    );
    if (vague.length === 0) return NEUTRAL;
    const names = vague.map(({ facts }) => facts.material.tradeName).join(', ');
    return {
      verdict: 'against',
      strength: vague.length / emulsifiers.length,
      why: `HLB estimated or missing: ${names}.`,
    };
  },
};
