import { NOTHING_KNOWN } from '../emulsions/hlb-methods';
import type { HlbInput } from '../emulsions/hlb-methods';
import type { StructureReading } from './read-structure';

/** What a structure tells the HLB methods; the user's corrections go over it. */
export function hlbInputOf(reading: StructureReading, known: HlbInput['known'] = null): HlbInput {
  const noEster = whyNoEster(reading);
  const polyolEster = noEster === null ? reading.ester : null;
  return {
    ...NOTHING_KNOWN,
    charge: reading.charge,
    oxyethylenePercent: reading.oxyethylenePercent,
    polyolPercent: reading.polyolPercent,
    saponificationNumber: polyolEster?.saponificationNumber ?? null,
    acidNumber: polyolEster?.acidNumber ?? null,
    notPolyolEster: noEster,
    hydrophilicMolarMass: reading.hydrophilicMolarMass,
    molarMass: reading.molarMass.value,
    groups: reading.groups,
    withoutNumber: reading.withoutNumber,
    known,
  };
}

/** S and A describe esters of a polyol with fatty acids; null where they do. */
function whyNoEster({ notPolyolEster, ester, oxyethyleneUnits }: StructureReading): string | null {
  if (notPolyolEster !== null) return notPolyolEster;
  if (ester && oxyethyleneUnits > 1)
    return 'It holds an oxyethylene chain, which S and A would count as polyol.';
  return null;
}
