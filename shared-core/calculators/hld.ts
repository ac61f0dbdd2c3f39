import { hldIonic, hldMeaning, hldNonionic } from '../emulsions/hld';
import type { IonicSystem, NonionicSystem } from '../emulsions/hld';
import { hldZeroSalinity, hldZeroTemperature, storageWindow } from '../emulsions/hld-zero';
import type { StorageWindow } from '../emulsions/hld-zero';
import { Problem } from '../problems/problem';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { entered, givens, type Calculated, type Given, type Result } from './calculated';
import type { HldRequest } from './hld-request';
import { knownLine, oilMix, surfactantMix, type KnownLine, type Library, type Mix } from './mixes';

export type HldSystem = ({ kind: 'ionic' } & IonicSystem) | ({ kind: 'non-ionic' } & NonionicSystem);

export interface HldCalculated extends Calculated {
  system: HldSystem;
  temperature: number;
  window: { coldest: number; hottest: number; is: StorageWindow };
}

/** HLD at any temperature. @throws Problem `invalid-input` */
export function hldAt(system: HldSystem, temperature: number): Worked {
  return system.kind === 'ionic' ? hldIonic(system, temperature) : hldNonionic(system, temperature);
}

/**
 * HLD of a system, where it is zero, and whether storage crosses zero. Only known EACN and Cc are used.
 *
 * @param library the picked materials, by id
 * @throws Problem `invalid-input` for what is missing or impossible
 */
export function calculateHld(request: HldRequest, library: Library): HldCalculated {
  const oilLines = request.oils.map((line, index) => knownLine(line, 'eacn', library, index));
  const surfactantLines = request.surfactants.map((line, index) => knownLine(line, 'cc', library, index));
  const oils = oilMix(oilLines);
  const surfactants = surfactantMix(surfactantLines);
  const system = systemOf(request, oils.worked.value, surfactants.worked.value);
  const temperature = entered(request.temperature, 'Temperature', 'temperature');
  const coldest = entered(request.coldest, 'Coldest storage temperature', 'coldest');
  const hottest = entered(request.hottest, 'Hottest storage temperature', 'hottest');
  const at = hldAt(system, temperature);
  const is = storageWindow(system, coldest, hottest);
  const zero = zeroOf(system, temperature);
  return {
    title: `HLD, ${system.kind}`,
    given: [
      ...mixGivens(oilLines, 'Oil', 'EACN'),
      ...mixGivens(surfactantLines, 'Surfactant', 'Cc'),
      ...givenOf(request, system, temperature),
    ],
    results: [
      {
        key: 'hld',
        label: `HLD at ${show(temperature)} °C`,
        worked: at,
        digits: 2,
        says: hldMeaning(at.value),
      },
      ...zero.results,
      { key: 'eacn', label: 'EACN of the oil phase', worked: oils.worked, digits: 1, says: coverage(oils) },
      {
        key: 'cc',
        label: 'Cc of the surfactants',
        worked: surfactants.worked,
        digits: 2,
        says: coverage(surfactants),
      },
      {
        key: 'cold',
        label: `HLD at ${show(coldest)} °C`,
        worked: is.atCold,
        digits: 2,
        says: hldMeaning(is.atCold.value),
      },
      {
        key: 'hot',
        label: `HLD at ${show(hottest)} °C`,
        worked: is.atHot,
        digits: 2,
        says: hldMeaning(is.atHot.value),
      },
    ],
    withheld: zero.withheld,
    notes: [is.says],
    system,
    temperature,
    window: { coldest, hottest, is },
  };
}

function coverage({ without, coveredPercent }: Mix): string {
  if (without.length === 0) return '';
  return `covers ${show(Number(coveredPercent.toFixed(1)))} %; no value known for ${without.join(', ')}, and none guessed`;
}

function systemOf(request: HldRequest, eacn: number, cc: number): HldSystem {
  const common = {
    eacn,
    cc,
    salinityPercent: entered(request.salinityPercent, 'Salinity', 'salinityPercent'),
    alcoholTerm: entered(request.alcoholTerm, 'Alcohol term', 'alcoholTerm'),
    k: entered(request.k, 'K', 'k'),
  };
  if (request.kind === 'ionic')
    return { kind: 'ionic', ...common, alphaT: entered(request.alphaT, 'αT', 'alphaT') };
  return {
    kind: 'non-ionic',
    ...common,
    b: entered(request.b, 'b', 'b'),
    cT: entered(request.cT, 'cT', 'cT'),
  };
}

/** The temperature (non-ionic) or salinity (ionic) of inversion, or why there is none. */
function zeroOf(
  system: HldSystem,
  temperature: number,
): Pick<Calculated, 'withheld'> & { results: Result[] } {
  const ionic = system.kind === 'ionic';
  const label = ionic ? 'Salinity where HLD is 0' : 'Temperature where HLD is 0';
  try {
    const worked = ionic ? hldZeroSalinity(system, temperature) : hldZeroTemperature(system);
    const says = ionic ? '' : 'phase-inversion temperature';
    return { results: [{ key: 'zero', label, worked, digits: ionic ? 2 : 1, says }], withheld: [] };
  } catch (cause) {
    if (!(cause instanceof Problem)) throw cause;
    return { results: [], withheld: [{ label, why: `${cause.message} ${cause.advice}` }] };
  }
}

/** Each part of a mix with its parts by mass and what is known of it. */
function mixGivens(lines: readonly KnownLine[], part: string, figure: string): Given[] {
  return lines.map(({ name, parts, value, molarMass }, index) => {
    const known = value === null ? `no ${figure} known` : `${figure} ${show(value)}`;
    const mass = molarMass === null ? [] : [`${show(molarMass)} g/mol`];
    return {
      label: lines.length === 1 ? part : `${part} ${index + 1}`,
      value: [name, `${show(parts)} ${parts === 1 ? 'part' : 'parts'} by mass`, known, ...mass].join(', '),
      unit: '',
    };
  });
}

function givenOf(request: HldRequest, system: HldSystem, temperature: number): Given[] {
  return givens([
    ['Salinity', system.salinityPercent, 'g per 100 mL'],
    ['Temperature', temperature, '°C'],
    ['Alcohol term', system.alcoholTerm, ''],
    ['K', system.k, 'per EACN'],
    ['αT', system.kind === 'ionic' ? system.alphaT : null, 'per K'],
    ['b', system.kind === 'non-ionic' ? system.b : null, 'per g/100 mL'],
    ['cT', system.kind === 'non-ionic' ? system.cT : null, 'per K'],
    ['Stored between', `${show(request.coldest ?? 0)} and ${show(request.hottest ?? 0)} °C`, ''],
  ]);
}
