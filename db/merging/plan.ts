import type { LibraryDocument } from '@core/exchange/document';
import type { InciPart } from '@core/materials/composition';
import { choiceOf, recordKey, type Choice, type Decisions, type FieldSides } from '@core/merging/choice';
import { circlesAmong, type Named } from '@core/merging/circles';
import { chosenContent } from '@core/merging/join';
import { needsOf } from '@core/merging/needs';
import { tradeNameKey } from '@core/materials/nested';
import type { Reader } from '../database';
import { baseOf, type Entry } from './entries';

/** What would become of a record. */
export interface Planned {
  entry: Entry;
  choice: Choice;
  /** What it would then hold; null where nothing of it changes here. */
  content: object | null;
  /** The title of what needs it, where it is taken for that reason alone. */
  follows: string | null;
  /** Why it is not taken although it was chosen. */
  refused: string | null;
}

interface PlanParts {
  ours: Reader;
  theirs: LibraryDocument;
  entries: readonly Entry[];
  decisions: Decisions;
}

type Plan = Map<string, Planned>;

function contentFor(ours: Reader, entry: Entry, choice: Choice, fields: FieldSides = {}): object | null {
  if (choice === 'leave' || !entry.theirs) return null;
  if (!entry.ours) return entry.theirs.content;
  const states = { base: baseOf(ours, entry), ours: entry.ours.content, theirs: entry.theirs.content };
  return chosenContent(entry.noun, states, choice, fields);
}

function begun({ ours, entries, decisions }: PlanParts): Plan {
  return new Map(
    entries.map((entry) => {
      const choice = choiceOf(entry.relation, entry.key, decisions);
      const content = contentFor(ours, entry, choice, decisions.fields[entry.key]);
      return [entry.key, { entry, choice, content, follows: null, refused: null }];
    }),
  );
}

/** Takes what others need and is not here; and again what that needs. */
function follow(ours: Reader, plan: Plan, title: string, needs: readonly string[]): void {
  for (const key of needs) {
    const needed = plan.get(key);
    if (!needed || needed.entry.ours || needed.choice !== 'leave' || needed.refused !== null) continue;
    needed.choice = 'theirs';
    needed.content = contentFor(ours, needed.entry, 'theirs');
    needed.follows = title;
    follow(ours, plan, needed.entry.title, needsOf(needed.entry.noun.kind, needed.content ?? {}));
  }
}

function refuse(planned: Planned, why: string): void {
  planned.refused = why;
  planned.choice = 'leave';
  planned.content = null;
}

/** The materials as they would stand. */
function materialsOf(plan: Plan): Named[] {
  return [...plan.values()].flatMap(({ entry, content }): Named[] => {
    if (entry.noun.kind !== 'material') return [];
    const held = (content ?? entry.ours?.content) as
      { tradeName: string; composition: InciPart[] } | undefined;
    if (!held) return [];
    return [{ id: entry.id, tradeName: held.tradeName, parts: held.composition.map(({ inci }) => inci) }];
  });
}

/** Refuses what would make a material hold itself, until none does. */
function refuseCircles(ours: Reader, plan: Plan): void {
  const names = ours.all<{ name: string }>('SELECT name FROM substance');
  const substances = new Set(names.map(({ name }) => tradeNameKey(name)));
  for (;;) {
    const materials = materialsOf(plan);
    const titles = new Map(materials.map(({ id, tradeName }) => [id, tradeName]));
    const circles = circlesAmong(materials, (name) => substances.has(name));
    let any = false;
    for (const [id, way] of circles) {
      const planned = plan.get(recordKey('material', id));
      if (!planned?.content) continue;
      const words = way.map((step) => titles.get(step) ?? '').join(' → ');
      refuse(planned, `It would come to hold itself: ${words}. Change the composition on one side first.`);
      any = true;
    }
    if (!any) return;
  }
}

/** Refuses what needs something that is neither here nor taken. */
function refuseUnsupported(plan: Plan): void {
  for (const planned of plan.values()) {
    if (!planned.content) continue;
    const missing = needsOf(planned.entry.noun.kind, planned.content)
      .map((key) => plan.get(key))
      .find((needed) => !needed || (!needed.entry.ours && !needed.content));
    if (missing === undefined) continue;
    refuse(planned, `It needs “${missing.entry.title}”, which is not taken.`);
  }
}

function refuseIncomplete(plan: Plan): void {
  for (const planned of plan.values()) {
    if (!planned.content) continue;
    if (needsOf(planned.entry.noun.kind, planned.content).every((key) => plan.has(key))) continue;
    refuse(planned, 'It needs a raw material that neither library holds any more.');
  }
}

/** The keys of the materials that batches to be taken were made of. */
function needsOfBatches({ theirs, ours }: PlanParts, plan: Plan): [title: string, needs: string[]][] {
  const known = new Set(ours.all<{ id: string }>('SELECT id FROM batch').map(({ id }) => id));
  const formulaOf = new Map(theirs.versions.map(({ id, formulaId }) => [id, formulaId]));
  return theirs.batches
    .filter(({ id, versionId }) => {
      const planned = plan.get(recordKey('formula', formulaOf.get(versionId) ?? ''));
      return !known.has(id) && planned !== undefined && comesWith(planned);
    })
    .map(({ number, lines }) => [
      `batch ${number}`,
      lines.map(({ materialId }) => recordKey('material', materialId)),
    ]);
}

/** Whether what belongs to a formula, such as its versions, is taken with it. */
export function comesWith({ entry, choice, refused }: Planned): boolean {
  if (refused !== null || !entry.theirs) return false;
  if (choice !== 'leave') return true;
  return entry.ours !== null && (entry.relation === 'same' || entry.relation === 'ours newer');
}

/** What would become of every record: as decided, with what others need, and without what cannot be. */
export function planMerge(parts: PlanParts): Plan {
  const plan = begun(parts);
  for (const { entry, content } of [...plan.values()])
    if (content) follow(parts.ours, plan, entry.title, needsOf(entry.noun.kind, content));
  for (const [title, needs] of needsOfBatches(parts, plan)) follow(parts.ours, plan, title, needs);
  refuseIncomplete(plan);
  refuseCircles(parts.ours, plan);
  refuseUnsupported(plan);
  return plan;
}
