import { dayWords, formatDate, formatMoment } from '@core/locale/dates';
import { editNumber } from '@core/locale/edit-number';
import { formatMass } from '@core/locale/mass';
import { formatMoney } from '@core/locale/money';
import { regionText } from '@core/locale/readable';
import { count } from '@core/locale/words';
import { formatNumber, formatPercent, formatShare, type Decimals } from '@core/locale/numbers';
import type { Currency } from '@core/quantities/money';
import { useSettings } from './store';

/** Numbers, masses, money and dates as the library's language region writes them. Reactive to the setting. */
export function useNumbers() {
  const settings = useSettings();
  const region = () => settings.current.languageRegion;
  return {
    number: (value: number, digits?: number | Decimals) => formatNumber(value, region(), digits),
    /** "1 material", "5,000 materials". */
    count: (many: number, one: string) => count(many, one, region()),
    /** As it stands in a field: without thousands marks. */
    edited: (value: number, mostDigits?: number) => editNumber(value, region(), mostDigits),
    percent: (ppm: number, digits?: number) => formatPercent(ppm, region(), digits),
    share: (ppm: number, digits?: number) => formatShare(ppm, region(), digits),
    mass: (mg: number, readabilityMg?: number) => formatMass(mg, region(), readabilityMg),
    money: (minor: number, currency: Currency) => formatMoney(minor, currency, region()),
    /** A sentence with numbers, as the region writes them. */
    said: (text: string) => regionText(text, region()),
    date: (iso: string) => formatDate(iso, region()),
    /** A day, or what stands in its place: nothing where none is known. */
    day: (day: string) => dayWords(day, region()),
    moment: (iso: string) => formatMoment(iso, region()),
  };
}
