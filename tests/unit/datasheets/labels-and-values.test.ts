import { cleanValue, withRange } from '@core/datasheets/clean-value';
import { labelled, labelOf } from '@core/datasheets/find-label';
import { formIn, valueSaid } from '@core/datasheets/read-value';
import type { DecimalMark } from '@core/imports/quantity';
import { describe, expect, it } from 'vitest';

const NO_PARTS = { unit: '', condition: '', typical: '' };
const said = (
  key: string,
  text: string,
  parts: Partial<typeof NO_PARTS> = {},
  mark: DecimalMark | null = null,
) => valueSaid(key, text, { ...NO_PARTS, ...parts }, { mark, order: null, words: {} });
const ends = (low: number | null, value: number | null, high: number | null) => ({ low, value, high });

describe('a value without what follows it and changes nothing', () => {
  it.each<[string, string, string, string]>([
    ['0.98 g/cm³ at 20 °C', 'g/mL', '0.98 g/cm³', 'at 20 °C'],
    ['0,92 bei 25 °C', 'g/mL', '0,92', 'bei 25 °C'],
    ['60 – 65 °C (140 – 149 °F)', '°C', '60 – 65 °C', '140 – 149 °F'],
    ['5.0 – 7.0 (10 % in water)', '', '5.0 – 7.0', '10 % in water'],
    ['2 – 5 % of the total formula', '%', '2 – 5 %', ''],
    ['2 – 5 % im Endprodukt', '%', '2 – 5 %', ''],
    ['1 à 3 % dans le produit fini', '%', '1 à 3 %', ''],
    ['12.0, typical', '', '12.0', ''],
    ['typically 12', '', '12', ''],
    ['approx. 60 °C', '°C', '60 °C', ''],
    ['15 (Griffin)', '', '15', ''],
    ['15 *', '', '15', ''],
    ['12 a 14 °C', '°C', '12 a 14 °C', ''],
    ['12 ± 1', '', '12 ± 1', ''],
    ['3 (of the oil phase)', '%', '3 (of the oil phase)', ''],
  ])('%s', (written, unit, text, condition) => {
    const clean = cleanValue(written, unit);
    expect(clean.text).toBe(text);
    if (condition !== '') expect(clean.condition).toContain(condition.replace(/^(at|bei) /, ''));
  });

  it('what stands in its middle stays: a second value is not glued to the first', () => {
    expect(cleanValue('5 at 25 °C and 7 at 40 °C', '').text).toBe('5 at 25 °C and 7');
    expect(said('figures.phAsSupplied', '5 at 25 °C and 7 at 40 °C')).toEqual([]);
  });

  it('“between 9 and 11” is a range in four languages', () => {
    for (const text of [
      'between 9 and 11',
      'from 9 to 11',
      'zwischen 9 und 11',
      'von 9 bis 11',
      'entre 9 et 11',
      'de 9 à 11',
      'entre 9 y 11',
    ])
      expect(withRange(text), text).toBe('9 – 11');
    expect(withRange('9')).toBe('9');
  });
});

describe('a label as a whole', () => {
  it.each<[string, string, string, string]>([
    ['HLB (Griffin)', 'figures.hlb', '', ''],
    ['HLB-Wert:', 'figures.hlb', '', ''],
    ['Acid value (mg KOH/g)', 'figures.acidValue', 'mg KOH/g', ''],
    ['Jodzahl (g I2/100g)', 'figures.iodineValue', 'g I2/100g', ''],
    ['Melting point, °C', 'figures.meltingPoint', '°C', ''],
    ['Dichte bei 20 °C, g/cm³', 'figures.density', 'g/cm³', 'bei 20 °C'],
    ['Density (20 °C) [g/ml]', 'figures.density', 'g/ml', '20 °C'],
    ['pH value (10 % in water)', 'figures.phAsSupplied', '', '10 % in water'],
    ['pH-Wert (1%ig in Wasser, 20 °C)', 'figures.phAsSupplied', '', '1%ig in Wasser, 20 °C'],
    ['Viscosity (20 °C) (mPa·s)', 'figures.viscosity', 'mPa·s', '20 °C'],
    ['Indice d’acide', 'figures.acidValue', '', ''],
    ['Punto de fusión', 'figures.meltingPoint', '', ''],
  ])('%s', (text, key, unit, condition) => {
    expect(labelOf(text)).toEqual({ key, unit, condition });
  });

  it.each(['Required HLB', 'Flash point', 'Refractive index'])('“%s” is known, and passed over', (text) => {
    expect(labelOf(text)?.key).toBeNull();
  });
  it.each([
    'Viscosity [cSt]',
    'Total HLB of the blend',
    'pH of a 5 % solution',
    'HLB (of the emulsion)',
    '',
    'x'.repeat(200),
  ])('“%s” is none that can be trusted', (text) => {
    expect(labelOf(text)).toBeNull();
  });
  it('with its value in one piece', () => {
    expect(labelled('HLB: 12')).toMatchObject({ label: { key: 'figures.hlb' }, value: '12' });
    expect(labelled('HLB = 12')?.value).toBe('12');
    expect(labelled('Acid value max. 2')?.value).toBe('max. 2');
    expect(labelled('INCI Aqua 5')).toBeNull();
    expect(labelled('Phenol: none')).toBeNull();
  });
});

describe('a figure beside its label', () => {
  it.each<[string, string, ReturnType<typeof ends>]>([
    ['figures.hlb', '15.5', ends(null, 15.5, null)],
    ['figures.hlb', '14 – 16', ends(14, null, 16)],
    ['figures.density', '980 kg/m³', ends(null, 0.98, null)],
    ['figures.density', '0,98', ends(null, 0.98, null)],
    ['figures.meltingPoint', '140 °F', ends(null, 60, null)],
    ['figures.viscosity', '2 Pa·s', ends(null, 2000, null)],
    ['figures.acidValue', 'max. 2 mg KOH/g', ends(null, null, 2)],
    ['usage.range', '2 – 5 %', ends(2, null, 5)],
    ['usage.range', 'up to 5 %', ends(null, null, 5)],
  ])('%s “%s”', (key, text, value) => {
    expect(said(key, text)[0]).toMatchObject({ key, value });
  });

  it.each([
    ['figures.hlb', '45', 'no HLB is so high'],
    ['figures.phAsSupplied', '15', 'no pH is so high'],
    ['figures.meltingPoint', '60', 'degrees of which scale it does not say'],
    ['figures.viscosity', '2.000 mPa·s', 'two thousand, or two'],
    ['figures.viscosity', '2000 cSt', 'another kind of measure'],
    ['figures.acidValue', '2.5 mg NaOH/g', 'another unit'],
    ['usage.range', '2 – 5', 'of what it does not say'],
    ['usage.range', 'min. 2 %', 'a use without a most is no range of use'],
    ['usage.range', '0.5 – 150 %', 'more than all'],
    ['figures.hlb', 'n/a', 'not known'],
    ['figures.hlb', '16 – 14', 'runs downwards'],
  ])('%s “%s” is left out: %s', (key, text) => {
    expect(said(key, text)).toEqual([]);
  });

  it('of thousands is read once the sheet shows its decimal mark', () => {
    expect(said('figures.viscosity', '2.000 mPa·s', {}, ',')[0]?.value).toEqual(ends(null, 2000, null));
    expect(said('figures.viscosity', '2.000 mPa·s', {}, '.')[0]?.value).toEqual(ends(null, 2, null));
  });

  it('a pH of a dilution is only asked about, also where the temperature stands beside it', () => {
    const at = labelOf('pH-Wert (1%ig in Wasser, 20 °C)')!;
    expect(said('figures.phAsSupplied', '5,5', at)[0]).toMatchObject({
      sure: 'unsure',
      note: 'The sheet gives the pH of a dilution (1%ig in Wasser, 20 °C), not of the material itself.',
    });
    expect(said('figures.phAsSupplied', '5,5 (10 % aq.)')[0]?.sure).toBe('unsure');
    expect(said('figures.phAsSupplied', '5,5 bei 20 °C')[0]?.sure).toBe('sure');
  });

  it('a typical value counts within its range, and is dropped where it lies outside', () => {
    expect(said('figures.hlb', '14 – 16', { typical: '15' })[0]?.value).toEqual(ends(14, 15, 16));
    expect(said('figures.hlb', '14 – 16', { typical: '20' })[0]?.value).toEqual(ends(14, null, 16));
  });
});

describe('the form that a text names', () => {
  it.each<[string, string | null]>([
    ['white powder', 'powder'],
    ['weiße Schuppen', 'flakes'],
    ['poudre blanche', 'powder'],
    ['pastilles', 'pellets'],
    ['viscous liquid', 'viscous liquid'],
    ['klare Flüssigkeit', 'liquid'],
    ['liquid to paste', null],
    ['colourless', null],
  ])('%s: %s', (text, form) => {
    expect(formIn(text)).toBe(form);
  });
});
