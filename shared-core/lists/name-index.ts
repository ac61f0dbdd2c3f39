import { foldedWords } from '../quantities/fold';
import { textsOf, type ListDescription, type ListEntry } from './description';
import { addSlot, emptySet, slotsIn, type SlotSet } from './slot-set';

/** A code as it is typed from memory: without case, hyphens and spaces. */
export function plainCode(code: string): string {
  return foldedWords(code).join('');
}

const plainWords = (text: string): string => foldedWords(text).join(' ');

/** What records are called, whole: for finding the one that is meant by name or number. */
export class NameIndex {
  private readonly slotsOf = new Map<string, number[]>();
  private readonly names: string[] = [];
  /** What else records are called, such as by INCI name; one name a line. */
  private readonly others: string[] = [];
  private readonly otherKeys: readonly string[];

  constructor(private readonly description: Pick<ListDescription, 'name' | 'code' | 'texts'>) {
    const { name, code, texts } = description;
    this.otherKeys = texts.names.filter((key) => key !== name && key !== code);
  }

  add(slot: number, entry: ListEntry): void {
    this.names[slot] = plainWords(textsOf(entry, this.description.name).join(' '));
    this.others[slot] = this.otherKeys.map((key) => plainWords(textsOf(entry, key).join(' '))).join('\n');
    const code = this.codeOf(entry);
    if (code !== '') this.slotsOf.set(code, [...(this.slotsOf.get(code) ?? []), slot]);
  }

  remove(slot: number, entry: ListEntry): void {
    this.names[slot] = '';
    this.others[slot] = '';
    const code = this.codeOf(entry);
    const left = (this.slotsOf.get(code) ?? []).filter((other) => other !== slot);
    if (left.length > 0) this.slotsOf.set(code, left);
    else this.slotsOf.delete(code);
  }

  /** The slots of this code or number. */
  ofCode(text: string, capacity: number): SlotSet {
    const found = emptySet(capacity);
    for (const slot of this.slotsOf.get(plainCode(text)) ?? []) addSlot(found, slot);
    return found;
  }

  /** The slots of `among` whose name begins with these words, the last one perhaps not typed to its end. */
  beginning(text: string, of: 'name' | 'other names', among: SlotSet, capacity: number): SlotSet {
    const begin = plainWords(text);
    const found = emptySet(capacity);
    if (begin === '') return found;
    const starts =
      of === 'name'
        ? (slot: number): boolean => this.names[slot]!.startsWith(begin)
        : (slot: number): boolean => `\n${this.others[slot]!}`.includes(`\n${begin}`);
    for (const slot of slotsIn(among)) if (starts(slot)) addSlot(found, slot);
    return found;
  }

  private codeOf(entry: ListEntry): string {
    const { code } = this.description;
    return code === null ? '' : plainCode(textsOf(entry, code).join(' '));
  }
}
