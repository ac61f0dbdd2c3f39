/** A made-up maker's shelf, as messy as they come: German headings, decimal commas, a title above, charges written as anybody liked. */
const CHARGES = [
  ['nonion.', 'nicht-ionisch', 'NI'],
  ['anionisch', 'anion', 'Anionaktiv'],
  ['kationisch', 'cationic', 'Kation'],
  ['amphoter', 'Zwitterionisch', 'ampho'],
];
const FORMS = ['Pastillen', 'Schuppen', 'Pulver', 'pastös', 'flüssig', 'viskos'];
const FUNCTIONS = ['Emulgator', 'Co-Emulgator, Konsistenzgeber', 'Tensid', 'Emollient / Lösemittel'];
const INCI = [
  'Cetearyl Glucoside',
  'Glyceryl Stearate (60 %); PEG-100 Stearate (40 %)',
  'Sodium Stearate',
  'Behentrimonium Chloride',
];

export const ROWS = 400;
/** Which rows, counted from 1, are bad, and a word of the reason that must be given. */
export const BAD: Readonly<Record<number, { change: Partial<Row>; why: RegExp }>> = {
  7: { change: { hlb: 'hoch' }, why: /not a number/ },
  31: { change: { charge: 'geladen' }, why: /no word of Charge/ },
  58: { change: { name: '' }, why: /trade name/ },
  90: { change: { inci: '' }, why: /INCI/ },
  123: { change: { max: '150 %' }, why: /more than 100 %/ },
  160: { change: { price: 'auf Anfrage' }, why: /not an amount of money/ },
  201: { change: { shelf: '2 Wochen' }, why: /no unit/ },
  245: { change: { hlb: '55' }, why: /between 0 and 40/ },
  290: { change: { min: '8', max: '3' }, why: /rise/ },
  333: { change: { code: 'R-0001' }, why: /already in line/ },
  388: { change: { hlb: '#WERT!' }, why: /not a number|shows/ },
};

interface Row {
  code: string;
  name: string;
  inci: string;
  charge: string;
  form: string;
  functions: string;
  hlb: string;
  min: string;
  max: string;
  shelf: string;
  supplier: string;
  pack: string;
  price: string;
  lot: string;
}

export function row(n: number): Row {
  const kind = n % 4;
  return {
    code: `R-${String(n).padStart(4, '0')}`,
    name: `Feldhaus Muster ${n}`,
    inci: INCI[kind]!,
    charge: CHARGES[kind]![n % 3]!,
    form: FORMS[n % 6]!,
    functions: FUNCTIONS[kind]!,
    hlb: kind === 0 ? `${5 + (n % 9)},${n % 10}` : kind === 1 ? `${3 + (n % 4)}–${7 + (n % 4)}` : '-',
    min: '0,5',
    max: `${2 + (n % 3)},25 %`,
    shelf: n % 2 === 0 ? '24' : '2 Jahre',
    supplier: n % 3 === 0 ? 'Nordlicht Rohstoffe' : 'Haus Erlenbach',
    pack: n % 2 === 0 ? '25 kg' : '500 g',
    price: `${10 + (n % 7)},40 €`,
    lot: `L${n}`,
    ...BAD[n]?.change,
  };
}

const HEAD =
  'Artikel-Nr.;Handelsname;INCI-Bezeichnung;Ladung;Lieferform;Funktion;HLB-Wert;Einsatz min (%);Einsatz max (%);Haltbarkeit (Monate);Lieferant;Gebinde;Preis;Charge';
const quoted = (text: string): string => (/[;"\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);

/** The whole of it as a CSV file, with a title and an empty line above its headings. */
export function germanShelf(change: (row: Row, n: number) => Row = (one) => one): string {
  const lines = Array.from({ length: ROWS }, (_, at) => {
    const { code, name, inci, charge, form, functions, hlb, min, max, shelf, supplier, pack, price, lot } =
      change(row(at + 1), at + 1);
    return [code, name, inci, charge, form, functions, hlb, min, max, shelf, supplier, pack, price, lot]
      .map(quoted)
      .join(';');
  });
  return ['Rohstoffliste Feldhaus;;;;;;;;;;;;;', '', HEAD, ...lines].join('\r\n');
}
