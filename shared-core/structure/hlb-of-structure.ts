import { NOTHING_KNOWN } from '../emulsions/hlb-methods';
import type { HlbInput } from '../emulsions/hlb-methods';
import type { StructureReading } from './read-structure';

/** What a structure tells the HLB methods; the user's corrections go over it. */
export function hlbInputOf(reading: StructureReading, known: HlbInput['known'] = null): HlbInput {
  // S and A describe polyol esters; on a PEG ester the formula would count the whole chain as polyol.
  const polyolEster = reading.oxyethyleneUnits <= 1 ? reading.ester : null;
  return {
    ...NOTHING_KNOWN,
    charge: reading.charge,
    oxyethylenePercent: reading.oxyethylenePercent,
    polyolPercent: reading.polyolPercent,
    saponificationNumber: polyolEster?.saponificationNumber ?? null,
    acidNumber: polyolEster?.acidNumber ?? null,
    hydrophilicMolarMass: reading.hydrophilicMolarMass,
    molarMass: reading.molarMass.value,
    groups: reading.groups,
    withoutNumber: reading.withoutNumber,
    known,
  };
}
