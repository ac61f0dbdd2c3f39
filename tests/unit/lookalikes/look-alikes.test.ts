import { alikePairs, LookAlikes, type Sketch } from '@core/lookalikes/look-alikes';
import { isNear, nearKeys } from '@core/lookalikes/near-names';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const whole = (inci: string) => ({ inci, lowPpm: 1_000_000, highPpm: 1_000_000 });
const sketch = (id: string, tradeName: string, more: Partial<Sketch> = {}): Sketch => ({
  id,
  tradeName,
  code: '',
  composition: [whole(`Substance ${id}`)],
  ...more,
});
const by = (one: Sketch, other: Sketch) => new LookAlikes([other]).like(one)[0]?.by ?? [];

describe('materials that look alike', () => {
  it('go by nearly the same name, but not by another grade', () => {
    expect(by(sketch('a', 'Larkspur Wax'), sketch('b', 'LARKSPUR-WAX'))).toEqual(['name']);
    expect(by(sketch('a', 'Larkspur Wax'), sketch('b', 'Larkspr Wax', { composition: [] }))).toEqual([
      'name',
    ]);
    expect(by(sketch('a', 'Larkspur 20'), sketch('b', 'Larkspur 80'))).toEqual([]);
    expect(by(sketch('a', 'Larkspur 2'), sketch('b', 'Larkspur 20'))).toEqual([]);
    expect(by(sketch('a', 'Wax A'), sketch('b', 'Wax B'))).toEqual([]);
  });

  it('are not alike by a letter where nothing is common to what they hold', () => {
    const named = (tradeName: string, ...names: string[]) =>
      sketch(tradeName, tradeName, { composition: names.map((name) => ({ ...whole(name), lowPpm: 1 })) });
    const myristate = named('Isopropyl Myristate', 'Isopropyl Myristate');
    expect(by(myristate, named('Isopropyl Myristata', 'Isopropyl Palmitate'))).toEqual([]);
    const blend = named('Isopropyl Myristata', 'Isopropyl Palmitate', 'ISOPROPYL MYRISTATE');
    expect(by(myristate, blend)).toEqual(['name']);
    expect(by(myristate, { ...named('isopropyl-myristate', 'Isopropyl Palmitate'), id: 'b' })).toEqual([
      'name',
    ]);
  });

  it('bear the same code, however it is written', () => {
    expect(by(sketch('a', 'One', { code: 'R-012' }), sketch('b', 'Other', { code: 'r 012' }))).toEqual([
      'code',
    ]);
    expect(by(sketch('a', 'One', { code: 'R-012' }), sketch('b', 'Other', { code: 'R-013' }))).toEqual([]);
    expect(by(sketch('a', 'One'), sketch('b', 'Other'))).toEqual([]);
  });

  it('hold the same substances, in shares that may be the same', () => {
    const part = (inci: string, lowPpm: number, highPpm: number) => ({ inci, lowPpm, highPpm });
    const one = [part('Cetearyl Alcohol', 600_000, 900_000), part('Ceteareth-20', 100_000, 400_000)];
    const other = [part('Ceteareth-20', 200_000, 200_000), part('CETEARYL ALCOHOL', 800_000, 800_000)];
    const far = [part('Ceteareth-20', 800_000, 800_000), part('Cetearyl Alcohol', 200_000, 200_000)];
    const like = (a: Sketch['composition'], b: Sketch['composition']) =>
      by(sketch('a', 'One', { composition: a }), sketch('b', 'Other', { composition: b }));
    expect(like(one, other)).toEqual(['substances']);
    expect(like(one, far)).toEqual([]);
    expect(like(one, one.slice(0, 1))).toEqual([]);
  });

  it('are not alike for being perfume, which is no one substance', () => {
    const scent = (id: string, ...names: string[]) => sketch(id, id, { composition: names.map(whole) });
    expect(by(scent('Linen', 'Parfum'), scent('Orchard', 'Fragrance'))).toEqual([]);
    expect(by(scent('Linen', 'Parfum'), scent('Orchard', 'Parfum'))).toEqual([]);
    const oil = 'Lavandula Angustifolia Oil';
    expect(by(scent('Linen', oil), scent('Orchard', oil))).toEqual(['substances']);
  });

  it('are met once a pair, the surest first', () => {
    const all = [
      sketch('a', 'Larkspur Wax', { code: 'R-1' }),
      sketch('b', 'Something Else', { composition: [whole('Substance a')] }),
      sketch('c', 'Larkspur Waxx', { code: 'R1', composition: [] }),
    ];
    const steps = alikePairs(all);
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(step.value).toEqual([
      { ids: ['a', 'c'], by: ['code', 'name'] },
      { ids: ['a', 'b'], by: ['substances'] },
    ]);
  });
});

describe('names one slip apart', () => {
  const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 6, maxLength: 12 });
  it('are near, and share a key by which they are found', () => {
    fc.assert(
      fc.property(letters, fc.nat(11), fc.constantFrom('x', 'y'), fc.nat(2), (name, at, letter, kind) => {
        const cut = [name.slice(0, at), name.slice(at)] as const;
        const slip = kind === 0 ? cut[0] + letter + cut[1] : cut[0] + letter + cut[1].slice(1);
        expect(isNear(name, slip)).toBe(true);
        expect(isNear(slip, name)).toBe(true);
        expect(nearKeys(name).some((key) => nearKeys(slip).includes(key))).toBe(true);
      }),
    );
  });
});
