import { COMMON_PRACTICE, type Source } from '../working/working';
import type { CheckRule } from './check';
import { ethanolByVolume } from './self-preserving';

const CLAIMS =
  /\b(saniti[sz](e|er|ing|es)|disinfect\w*|anti-?bacterial|anti-?microbial|antiviral|germicid\w*|biocid\w*|kills? (germs|bacteria|viruses))\b/i;
/** From here to there ethanol and water kill at the skin, by volume. */
const KILLS = { from: 0.6, to: 0.95 };
const WHO: Source = {
  text: 'WHO, Guide to Local Production: WHO-recommended Handrub Formulations (2010): ethanol 80 % by volume; at least 60 %: common advice of health authorities',
  basis: 'memory',
};
const BORDER: Source = {
  text: 'Regulation (EU) No 528/2012 on biocidal products, Article 3, and 21 CFR 310 and 333 in the United States: check the current text',
  basis: 'memory',
};

/** A product that is said to kill germs is no cosmetic in most places, and needs what kills them. */
export const sanitising: CheckRule = {
  id: 'sanitising',
  name: 'Sanitising: what kills, and whose law it is',
  tells: 'the formula is said to sanitise, which takes enough alcohol, and is not a cosmetic in most places',
  judge({ content, used, watery }) {
    const claim = CLAIMS.exec([content.name, content.purpose].join(' '))?.[0];
    if (!claim) return [];
    const ethanol = ethanolByVolume(used);
    const lines = watery.map((line) => line.lineId);
    const weak = ethanol > 0.05 && (ethanol < KILLS.from || ethanol > KILLS.to);
    return [
      {
        ruleId: 'sanitising',
        severity: 'warn',
        title: `“${claim}” makes it a biocide or a medicine in most places, not a cosmetic`,
        lines: [],
        advice:
          'Such words may need an authorisation, and tests by standard (EN 1276, EN 1500): ask before anything is put on the market, or leave them out of its name and purpose.',
        source: BORDER,
      },
      ...(weak
        ? [
            {
              ruleId: 'sanitising',
              severity: 'warn' as const,
              title: `Ethanol makes ${(100 * ethanol).toFixed(0)} % of the volume of water and ethanol: outside ${100 * KILLS.from} to ${100 * KILLS.to} % it hardly kills`,
              lines,
              advice:
                'Raise it to 70 to 80 % by volume; pure ethanol kills less than ethanol with some water. Highly flammable: no flame, earthed vessels, ventilation, and local rules for storage.',
              source: WHO,
            },
          ]
        : []),
      ...(ethanol === 0
        ? [
            {
              ruleId: 'sanitising',
              severity: 'note' as const,
              title: 'It is said to kill germs, but holds no ethanol',
              lines,
              advice: 'What is to kill them, at which dose and in which time, is shown by tests alone.',
              source: COMMON_PRACTICE,
            },
          ]
        : []),
    ];
  },
};
