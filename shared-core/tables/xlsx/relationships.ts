import type { Archive } from './archive';
import { damaged } from './refusals';
import { readXmlPart } from './xml-part';

/** What a part of a workbook points at, by the id that it uses (ECMA-376 Part 2 (2021), 6.5). */
export interface Relationship {
  /** The last word of its type, such as `worksheet`: the same in the strict and the transitional form. */
  type: string;
  part: string;
}

/** The longest name that an archive can give a part. */
const LONGEST_TARGET = 0xffff;

/**
 * The part that a target means, seen from the part that points at it (ECMA-376 Part 2 (2021), 6.4, by RFC 3986, 5.2).
 * @throws Problem where it leads out of the archive.
 */
function resolvePart(from: string, target: string): string {
  if (target.length > LONGEST_TARGET)
    throw damaged(`${from || 'the workbook'} points at a name that is too long`);
  const steps = target.startsWith('/') ? [] : from.split('/').slice(0, -1);
  for (const step of target.split('/')) {
    if (step === '' || step === '.') continue;
    if (step !== '..') steps.push(step);
    else if (steps.pop() === undefined) throw damaged(`${from || 'the workbook'} points outside of the file`);
  }
  return steps.join('/');
}

/** Where the relationships of a part stand: ECMA-376 Part 2 (2021), 6.5.2; those of the whole file with an empty name. */
function relationshipsPart(part: string): string {
  const slash = part.lastIndexOf('/') + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
}

/** What a part points at within the file; empty where it points at nothing. Links to elsewhere are left out. */
export function readRelationships(archive: Archive, part: string): Map<string, Relationship> {
  const found = new Map<string, Relationship>();
  const where = relationshipsPart(part);
  if (!archive.has(where)) return found;
  readXmlPart(archive, where, {
    open(name, { Id, Type, Target, TargetMode }) {
      if (name !== 'Relationship' || TargetMode === 'External') return;
      if (Id === undefined || Type === undefined || Target === undefined)
        throw damaged(`${where} is incomplete`);
      const type = Type.slice(Type.lastIndexOf('/') + 1);
      // Only what is read is resolved: where a printer's settings lie does not matter.
      if (READ.has(type)) found.set(Id, { type, part: resolvePart(part, Target) });
    },
  });
  return found;
}

/** The parts that are read: ECMA-376 Part 1, 12.3.23, 12.3.24, 12.3.15 and 12.3.20. */
const READ = new Set(['officeDocument', 'worksheet', 'sharedStrings', 'styles']);

/** The part of a type among relationships, the first where there are several. */
export const partOfType = (relationships: ReadonlyMap<string, Relationship>, type: string) =>
  [...relationships.values()].find((relationship) => relationship.type === type)?.part;
