import { isPast, materialDocument, type MaterialDocument } from '@core/materials/document';
import { offer } from '@core/materials/offer';
import { documentFacts, documentWords, offersWords, offerWords } from '@core/materials/words';
import { describe, expect, it } from 'vitest';

describe('an offer', () => {
  const priced = {
    supplier: 'Oakbarrow',
    itemCode: 'O-1',
    packMg: 5_000_000,
    priceMinor: 5_800,
    currency: 'EUR',
    date: '2026-01-12',
  } as const;

  it('is told with its price per kilogram, by hand: 58 € for 5 kg are 11.60 €', () => {
    expect(offerWords(priced, 'en-GB')).toEqual([
      'Oakbarrow',
      'O-1',
      '5\u00a0kg',
      '€58.00',
      '€11.60',
      '12 Jan 2026',
    ]);
  });

  it('leaves open what is not known', () => {
    expect(offerWords({ ...priced, packMg: null, priceMinor: null }, 'en-GB').slice(2, 5)).toEqual([
      '',
      '',
      '',
    ]);
    expect(offerWords({ ...priced, priceMinor: null }, 'en-GB').slice(2, 5)).toEqual(['5\u00a0kg', '', '']);
    expect(offerWords({ ...priced, priceMinor: 0 }, 'en-GB').slice(3, 5)).toEqual(['€0.00', '€0.00']);
  });

  it('stands newest first among others, the list itself left as it is', () => {
    const offers = [priced, { ...priced, supplier: 'Later', date: '2026-02-01' }];
    expect(offersWords(offers, 'en-GB')).toMatch(/^Later .*; Oakbarrow /);
    expect(offers[0]?.supplier).toBe('Oakbarrow');
  });

  it.each([
    [{ packMg: null }, 'A price needs the size of its pack.'],
    [{ packMg: 0 }, 'The pack must weigh something.'],
    [{ priceMinor: -1 }, 'A price cannot be negative.'],
    [{ priceMinor: 0.5 }, 'This price has more decimals than its currency.'],
    [{ date: '12.1.2026' }, 'Write the date as year-month-day, for example 2026-03-31.'],
  ])('refuses %o', (part, message) => {
    expect(offer.safeParse({ ...priced, ...part }).error?.issues[0]?.message).toBe(message);
  });
});

describe('a document on file', () => {
  const paper = (part: Partial<MaterialDocument>): MaterialDocument => ({
    ...{ title: 'Paper', sha256: 'a'.repeat(64), mediaType: 'application/pdf', bytes: 10 },
    ...{ kind: 'safety data sheet', dated: '', validUntil: '', ...part },
  });

  it('holds to its last day, and is past on the next', () => {
    const sheet = paper({ dated: '2024-01-01', validUntil: '2026-03-01' });
    expect(isPast(sheet, [sheet], '2026-03-01')).toBe(false);
    expect(isPast(sheet, [sheet], '2026-03-02')).toBe(true);
    expect(isPast(paper({ dated: '2000-01-01' }), [], '2026-03-02')).toBe(false);
  });

  it('is replaced by a newer data sheet or specification, not by a newer certificate or one without a day', () => {
    const past = (kind: MaterialDocument['kind'], newer: Partial<MaterialDocument>) => {
      const old = paper({ kind, dated: '2024-01-01', validUntil: '2025-01-01' });
      return isPast(old, [old, paper({ kind, ...newer })], '2026-01-01');
    };
    expect(past('safety data sheet', { dated: '2025-01-01' })).toBe(false);
    expect(past('specification', { dated: '2025-01-01' })).toBe(false);
    expect(past('certificate', { dated: '2025-01-01' })).toBe(true);
    expect(past('safety data sheet', { dated: '2024-01-01' })).toBe(true);
    expect(past('safety data sheet', { dated: '' })).toBe(true);
    // A newer paper of another kind says nothing of this one.
    expect(past('safety data sheet', { kind: 'specification', dated: '2025-01-01' })).toBe(true);
  });

  it('is told by its kind and days', () => {
    const sheet = paper({ dated: '2026-03-03', validUntil: '2027-03-02' });
    expect(documentFacts(sheet, 'en-GB')).toBe('safety data sheet, 3 Mar 2026, valid until 2 Mar 2027');
    expect(documentWords([sheet, paper({ kind: 'other', title: 'Note' })], 'en-GB')).toBe(
      'Paper (safety data sheet, 3 Mar 2026, valid until 2 Mar 2027); Note (other)',
    );
  });

  it.each([
    [{ dated: '2026-03-02', validUntil: '2026-03-01' }, /before its own date/],
    [{ dated: 'March' }, /year-month-day/],
    [{ bytes: 0 }, /empty/],
    [{ sha256: 'x' }, /not known/],
  ])('refuses %o', (part, message) => {
    expect(materialDocument.safeParse({ ...paper({}), ...part }).error?.issues[0]?.message).toMatch(message);
    expect(materialDocument.safeParse(paper({ dated: '2026-03-01', validUntil: '2026-03-01' })).success).toBe(
      true,
    );
  });
});
