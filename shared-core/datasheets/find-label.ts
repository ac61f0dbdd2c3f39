import { plain } from '../imports/plain';
import { isUnitFor } from '../imports/units';
import { unitOf } from '../imports/target';
import { isTarget, targetOf } from '../imports/targets';
import { LABELS, LONGEST_LABEL } from './labels';

/** A label as it stands on a sheet. */
export interface Label {
  /** What it names; null for what is passed over. */
  key: string | null;
  /** The unit that it gives; empty for none. */
  unit: string;
  /** Under what the value was found, such as “1 % in water” or “20 °C”; empty for none. */
  condition: string;
}

const TEMPERATURE = /(?:(?:at|bei|à|a|@)\s*)?[+-]?\d+(?:[.,]\d+)?(?:\s*[-–/]\s*\d+)?\s*°?\s*[CF]\b/i;
const DILUTED =
  /\d+(?:[.,]\d+)?\s*%(?:\s*(?:ig|aq|w\/w|w\/v|m\/m|p\/p|in|en|im|solution|lösung|wässrig|dispersion|de|dans|l['’]eau|wasser|water|agua|eau|disolución|solución|sol|aqueous|aqueuse|acuosa|ige|dilution|verdünnung|h2o|dest|distilled|purified)\.?)*/i;
const METHOD =
  /\b(?:ISO|DIN|EN|ASTM|AOCS|DGF|Ph\.?\s?Eur\.?|USP|EP|NF|OECD|OCDE|UNE|JP|IUPAC|SOP|QP|MP|CTFA|Brookfield|Höppler|Hoeppler|intern(?:al|e|o)?)\b/i;
const NEUTRAL =
  /^(?:typical|typisch|typique|típico|tel quel|as is|as supplied|wie geliefert|w\/w|approx\.?|ca\.?|dynamic|dynamisch|EU|PCPC|CTFA|INCI|unopened|ungeöffnet|griffin|theoretical|range|bereich)$/i;

const isCondition = (text: string): boolean =>
  [TEMPERATURE, DILUTED].some((one) => new RegExp(`^(?:${one.source})$`, 'i').test(text.trim()));
export const isMethod = (text: string): boolean => METHOD.test(text);
export const isNeutral = (text: string): boolean => NEUTRAL.test(text.trim());
export { isCondition };

const unitFor = (key: string | null, text: string): boolean =>
  key !== null && isTarget(key) && isUnitFor(unitOf(targetOf(key)), text.replace(/iodine|jod\b|iod\b/i, 'i'));

/** Whether a text is a unit of anything that is read. */
export const isUnitOf = (key: string | null, text: string): boolean =>
  text.trim() !== '' && unitFor(key, text.trim());

function lookUp(text: string): string | null | undefined {
  const word = plain(text);
  return word === '' ? undefined : LABELS.get(word);
}

/** What stands in brackets behind a name, each by itself. */
function bracketed(text: string): { name: string; inside: string[] } {
  const inside: string[] = [];
  const name = text.replace(/\s*[([]\s*([^()[\]]*)\s*[)\]]/g, (_all, one: string) => {
    inside.push(one.trim());
    return ' ';
  });
  return { name: name.trim(), inside };
}

/** A name, and the unit or condition written behind it without brackets: “Dichte bei 20 °C, g/cm³”. */
function tailed(text: string): { name: string; tails: string[] } {
  const tails: string[] = [];
  let name = text;
  for (let left = 3; left > 0; left--) {
    const found =
      /^([^,]+?)\s*,\s*([^,]+)$/.exec(name) ??
      /^(.+?)(?:\s*,\s*|\s+in\s+|\s+en\s+|\s+)((?:at|bei|à|a|@)\s*[+-]?\d.*|\d+(?:[.,]\d+)?\s*(?:%|°\s?[CF]).*|[^\s,]*[/%°·][^,]*|mPas|cP|cps|mPa·s|months?|Monate|mois|meses)$/i.exec(
        name,
      );
    if (!found?.[1] || !found[2]) break;
    name = found[1];
    tails.unshift(found[2].trim());
  }
  return { name, tails };
}

/**
 * The label that a text is, as a whole; null where it is none. What it says in brackets must be a unit, a condition or a
 * method: a label of anything else is not trusted.
 */
export function labelOf(written: string): Label | null {
  const text = written.replace(/[:*†‡¹²]+\s*$/, '').trim();
  if (text === '' || text.length > LONGEST_LABEL) return null;
  const whole = lookUp(text);
  if (whole !== undefined) return { key: whole, unit: '', condition: '' };
  const { name, inside } = bracketed(text);
  const direct = lookUp(name);
  const { name: bare, tails } = direct === undefined ? tailed(name) : { name, tails: [] };
  const key = direct ?? lookUp(bare);
  if (key === undefined) return null;
  const label: Label = { key, unit: '', condition: '' };
  for (const said of [...inside, ...tails].flatMap((one) => one.split(/\s*[;,]\s+|\s+in\s+(?=[^\s]*\/)/))) {
    if (said === '' || isNeutral(said) || isMethod(said)) continue;
    if (isCondition(said)) label.condition = [label.condition, said].filter((one) => one !== '').join(', ');
    else if (unitFor(key, said)) label.unit = said;
    else if (key === null) continue;
    else if (said.length <= 6 && lookUp(said) === key) continue;
    else return null;
  }
  return label;
}

/** A label with its value behind it, in one piece of text: “HLB: 12”, “Acid value max. 2”. */
export function labelled(text: string): { label: Label; value: string } | null {
  const marked = /^([^:=]{2,90}?)\s*[:=]\s*(\S.*)$/.exec(text);
  if (marked?.[1] && marked[2]) {
    const label = labelOf(marked[1]);
    if (label) return { label, value: marked[2] };
  }
  const counted =
    /^(\D{2,60}?(?:[([][^()[\]]*[)\]])?)\s+((?:[<>≤≥~≈]|max|min|ca\b|approx|up to|bis)?\.?\s*[+-]?\d.*)$/i.exec(
      text,
    );
  if (counted?.[1] && counted[2]) {
    const label = labelOf(counted[1]);
    if (label?.key?.startsWith('figures.')) return { label, value: counted[2] };
  }
  return null;
}
