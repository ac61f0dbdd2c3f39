import fc from 'fast-check';

/** A record with every kind of part that merging knows. */
export interface Recipe {
  name: string;
  notes: string;
  usage: { min: number; max: number } | null;
  figures: Record<string, { value: number; source: string }>;
  tags: string[];
  phases: Phase[];
  steps: Step[];
}
export interface Phase {
  id: string;
  title: string;
  lines: Line[];
}
export interface Line {
  id: string;
  material: string;
  ppm: number;
}
export interface Step {
  id: string;
  says: string;
}

/** A figure and its source are one fact. */
export const RECIPE_SHAPE = { whole: (path: string) => /^figures\.[^.]+$/.test(path) };

export const blank: Recipe = {
  name: 'Cream',
  notes: '',
  usage: null,
  figures: {},
  tags: [],
  phases: [],
  steps: [],
};

export function line(id: string, ppm = 10_000, material = 'Glycerin'): Line {
  return { id, material, ppm };
}

/** A change of a recipe: the old state in, the new one out. */
export type Edit = (recipe: Recipe) => Recipe;

export function withPhase(id: string, change: (phase: Phase) => Phase): Edit {
  return (recipe) => ({
    ...recipe,
    phases: recipe.phases.map((phase) => (phase.id === id ? change(phase) : phase)),
  });
}

export function withLine(id: string, part: Partial<Line>): Edit {
  return (recipe) => ({
    ...recipe,
    phases: recipe.phases.map((phase) => ({
      ...phase,
      lines: phase.lines.map((one) => (one.id === id ? { ...one, ...part } : one)),
    })),
  });
}

export function withoutLine(id: string): Edit {
  return (recipe) => ({
    ...recipe,
    phases: recipe.phases.map((phase) => ({ ...phase, lines: phase.lines.filter((one) => one.id !== id) })),
  });
}

export function moveLine(id: string, phaseId: string, at: number): Edit {
  return (recipe) => {
    const moved = recipe.phases.flatMap((phase) => phase.lines).find((one) => one.id === id);
    if (!moved || !recipe.phases.some((phase) => phase.id === phaseId)) return recipe;
    return withPhase(phaseId, (phase) => ({ ...phase, lines: phase.lines.toSpliced(at, 0, moved) }))(
      withoutLine(id)(recipe),
    );
  };
}

export function withoutPhase(id: string): Edit {
  return (recipe) => ({ ...recipe, phases: recipe.phases.filter((phase) => phase.id !== id) });
}

export const after = (recipe: Recipe, edits: readonly Edit[]): Recipe =>
  edits.reduce((state, edit) => edit(state), recipe);

const small = fc.integer({ min: 0, max: 3 });
const word = fc.constantFrom('a', 'b', 'c', 'd');
const figure = fc.constantFrom('hlb', 'density');

/** A recipe of phases p0… with lines l0…, and steps s0…. */
export const someRecipe: fc.Arbitrary<Recipe> = fc
  .record({ lines: fc.array(small, { maxLength: 3 }), steps: small, name: word, hasUsage: fc.boolean() })
  .map(({ lines, steps, name, hasUsage }) => {
    let next = 0;
    const phases = lines.map((count, at) => ({
      id: `p${at}`,
      title: `Phase ${at}`,
      lines: Array.from({ length: count }, () => line(`l${next++}`)),
    }));
    return {
      ...blank,
      name,
      usage: hasUsage ? { min: 1, max: 2 } : null,
      figures: { hlb: { value: 10, source: 'supplier' } },
      phases,
      steps: Array.from({ length: steps }, (_, at) => ({ id: `s${at}`, says: 'Stir.' })),
    };
  });

/** Any change; `own` marks what it adds, so that two sides never add a thing of the same id. */
export function someEdit(own: string): fc.Arbitrary<Edit> {
  const lineId = fc.integer({ min: 0, max: 8 }).map((n) => `l${n}`);
  const phaseId = small.map((n) => `p${n}`);
  const added = fc.integer({ min: 0, max: 5 }).map((n) => `${own}${n}`);
  return fc.oneof(
    word.map((name): Edit => (recipe) => ({ ...recipe, name })),
    word.map((notes): Edit => (recipe) => ({ ...recipe, notes })),
    fc.array(word, { maxLength: 2 }).map((tags): Edit => (recipe) => ({ ...recipe, tags })),
    small.map((min): Edit => (recipe) => ({ ...recipe, usage: { min, max: recipe.usage?.max ?? 9 } })),
    fc.constant<Edit>((recipe) => ({ ...recipe, usage: null })),
    fc.tuple(figure, small).map(([key, value]): Edit => (recipe) => ({
      ...recipe,
      figures: { ...recipe.figures, [key]: { value, source: own } },
    })),
    fc.tuple(lineId, small).map(([id, ppm]) => withLine(id, { ppm })),
    fc.tuple(lineId, word).map(([id, material]) => withLine(id, { material })),
    lineId.map(withoutLine),
    fc.tuple(lineId, phaseId, small).map(([id, phase, at]) => moveLine(id, phase, at)),
    fc.tuple(added, phaseId, small).map(
      ([id, phase, at]): Edit =>
        (recipe) =>
          recipe.phases.some((one) => one.lines.some((known) => known.id === `l${id}`))
            ? recipe
            : withPhase(phase, (one) => ({ ...one, lines: one.lines.toSpliced(at, 0, line(`l${id}`)) }))(
                recipe,
              ),
    ),
    phaseId.map(withoutPhase),
    fc.tuple(phaseId, word).map(([id, title]) => withPhase(id, (phase) => ({ ...phase, title }))),
    fc.constant<Edit>((recipe) => ({ ...recipe, phases: recipe.phases.toReversed() })),
    fc.constant<Edit>((recipe) => ({ ...recipe, steps: recipe.steps.toReversed() })),
    added.map(
      (id): Edit =>
        (recipe) =>
          recipe.steps.some((step) => step.id === `s${id}`)
            ? recipe
            : { ...recipe, steps: [...recipe.steps, { id: `s${id}`, says: 'Cool.' }] },
    ),
  );
}

export const someEdits = (own: string): fc.Arbitrary<Edit[]> => fc.array(someEdit(own), { maxLength: 5 });
