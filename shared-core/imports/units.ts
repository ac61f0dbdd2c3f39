import type { Quantity } from './quantity';

type Turn = (value: number) => number;
const same: Turn = (value) => value;
const times =
  (factor: number): Turn =>
  (value) =>
    Number((value * factor).toPrecision(12));

/** Spellings of units, in small letters without spaces, and how they become ours. The pound is that of 1959, exactly. */
const UNITS: Readonly<Record<string, readonly [spellings: string, turn: Turn][]>> = {
  '%': [
    [
      '% %w/w w/w% w/w ma% ma.-% gew% gew.-% gew.% wt% wt.% percent prozent pourcent porciento m/m %m/m',
      same,
    ],
    ['ppm mg/kg', times(1e-4)],
    ['‰ g/kg', times(0.1)],
  ],
  '°C': [
    ['°c c ºc ˚c degc grad gradc ° º', same],
    ['°f f ºf degf', (value) => Number(((value - 32) / 1.8).toPrecision(6))],
  ],
  months: [
    ['months month mo m mon mon. monate monat mois meses mes mesi mese', same],
    ['years year yr yrs y jahre jahr j ans an años año anni anno a', times(12)],
  ],
  'g/mL': [
    ['g/ml g/cm³ g/cm3 g/cc kg/l kg/dm³ kg/dm3', same],
    ['kg/m³ kg/m3 g/l', times(1e-3)],
  ],
  'mg KOH/g': [['mgkoh/g mgkoh', same]],
  'g I₂/100 g': [['gi₂/100g gi2/100g gj₂/100g gj2/100g gi/100g gj/100g g/100g gi/hg cgi₂/g cgi2/g', same]],
  'mPa·s': [
    ['mpa·s mpas mpa.s mpa*s mpa∙s mpa•s mpa⋅s cp cps cpoise centipoise', same],
    ['pa·s pas pa.s pa*s pa∙s pa⋅s', times(1000)],
  ],
  'g/mol': [['g/mol da u g.mol-1 gmol-1', same]],
  kg: [
    ['kg kilo kgs', same],
    ['g gr gramm gram grams gramme grammes', times(1e-3)],
    ['mg', times(1e-6)],
    ['t to tonne tonnen tonnes', times(1000)],
    ['lb lbs', times(0.45359237)],
  ],
};

const TURNS = new Map(
  Object.entries(UNITS).flatMap(([ours, list]) =>
    list.flatMap(([spellings, turn]) =>
      spellings.split(' ').map((one): [string, Turn] => [`${ours} ${one}`, turn]),
    ),
  ),
);

/** Whether a text names a unit that a column of `ours` may be written in. */
export function isUnitFor(ours: string, text: string): boolean {
  return TURNS.has(`${ours} ${text.replace(/\s+/g, '').toLowerCase()}`);
}

/**
 * A quantity in our unit.
 * @param ours the unit kept; empty where there is none
 * @param headed the unit that the column's heading names; empty where it names none
 * @returns the quantity, or null where its unit is none of those that `ours` can be told from
 */
export function inUnit(quantity: Quantity, ours: string, headed: string): Quantity | null {
  const unit = quantity.unit || headed.replace(/\s+/g, '').toLowerCase();
  if (unit === '') return { ...quantity, unit: ours };
  const turn = TURNS.get(`${ours} ${unit}`);
  if (!turn) return null;
  const [low, value, high] = [quantity.low, quantity.value, quantity.high].map((one) =>
    one === null ? null : turn(one),
  );
  return { low: low ?? null, value: value ?? null, high: high ?? null, unit: ours };
}
