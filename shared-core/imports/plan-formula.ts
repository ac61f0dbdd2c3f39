import {
  blankTarget,
  enteredFormula,
  phaseLetter,
  type Formula,
  type FormulaPhase,
  type ProductType,
  type Use,
} from '../formulas/formula';
import type { FormulaRecord } from '../formulas/noun';
import { blankProductFile } from '../formulas/product-file';
import { blankMarket } from '../products/market';
import { isFiner, percentFromPpm, ppmFromPercent, WHOLE_PPM } from '../quantities/share';
import { same } from '../record/same';
import type { FormulaRow } from './formula-rows';
import type { OutcomeKind, Planned } from './plan-row';
import type { Fault, TableRow, Values } from './row';

export interface FormulaPlanParts {
  /** The materials that bear one of some names. */
  find(names: readonly string[]): { rows: readonly { id: string; tradeName: string }[] } | null;
  nameOf(materialId: string): string;
  /** The formulas that bear a code or name. */
  known(name: string): readonly Formula[];
  newId(): string;
}

const textAt = (values: Values, key: string): string => String(values[key] ?? '');

function materialOf({ line, names }: FormulaRow, { find }: FormulaPlanParts): string | Fault {
  const [first, ...others] = find(names)?.rows ?? [];
  const said = `Line ${line}: “${names[0] ?? ''}”`;
  if (!first)
    return {
      heading: 'Material',
      message: `${said} is not a material of the library. Take it in first, or write its name as it is there.`,
    };
  if (others.length > 0)
    return {
      heading: 'Material',
      message: `${said} may be ${[first, ...others]
        .slice(0, 4)
        .map(({ tradeName }) => tradeName)
        .join(', ')}. Write the trade name or code of the one that is meant.`,
    };
  return first.id;
}

/** The phases that rows make: in the order in which they come, each as it was before where it has the same place. */
function phasesOf(
  rows: readonly FormulaRow[],
  before: readonly FormulaPhase[],
  parts: FormulaPlanParts,
): { phases: FormulaPhase[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const phases: FormulaPhase[] = [];
  const at = new Map<string, FormulaPhase>();
  for (const row of rows) {
    // "Phase a" and "A" are one place; a phase has its letter of itself.
    const called = row.phase.replace(/^phase\s+(?=[a-z]\d?$)/i, '');
    const place = called.toLowerCase();
    let phase = at.get(place);
    if (!phase) {
      const was = before[phases.length];
      const isLetter = /^[a-z]\d?$/i.test(called);
      const title = was?.title ?? (isLetter ? '' : called);
      phase = { id: was?.id ?? parts.newId(), title, temperatureC: was?.temperatureC ?? null, lines: [] };
      at.set(place, phase);
      phases.push(phase);
    }
    const materialId = materialOf(row, parts);
    if (typeof materialId !== 'string') {
      faults.push(materialId);
      continue;
    }
    if (row.percent === null && !row.toHundred)
      faults.push({ heading: 'Share', message: `Line ${row.line}: no share is given.` });
    const kept = before.flatMap(({ lines }) => lines).find((line) => line.materialId === materialId);
    phase.lines.push({
      id:
        kept && !phases.some(({ lines }) => lines.some(({ id }) => id === kept.id)) ? kept.id : parts.newId(),
      materialId,
      ppm: row.toHundred ? 0 : ppmFromPercent(row.percent ?? 0),
      toHundred: row.toHundred,
      // What a table says nothing of stays as it was.
      note: row.note || (kept?.note ?? ''),
    });
  }
  return { phases, faults };
}

function begun(values: Values, phases: FormulaPhase[]): FormulaRecord {
  return {
    code: textAt(values, 'formula.code'),
    name: textAt(values, 'formula.name') || textAt(values, 'formula.code'),
    productType: (values['formula.productType'] as ProductType | undefined) ?? 'o/w emulsion',
    use: (values['formula.use'] as Use | undefined) ?? 'leave-on',
    purpose: textAt(values, 'formula.purpose'),
    market: blankMarket(),
    phases,
    steps: [],
    target: blankTarget(),
    accepted: [],
    ...blankProductFile(),
    notes: '',
    archived: false,
  };
}

/** The lines as words, for what becomes different. */
function linesText(phases: readonly FormulaPhase[], { nameOf }: FormulaPlanParts): string {
  return phases
    .flatMap(({ lines }, at) =>
      lines.map(({ materialId, ppm, toHundred }) => {
        const share = toHundred ? 'q.s.' : `${percentFromPpm(ppm)} %`;
        return `${phaseLetter(at)} ${nameOf(materialId)} ${share}`;
      }),
    )
    .join('; ');
}

const shown = (phases: readonly FormulaPhase[]) =>
  phases.map(({ lines }) =>
    lines.map(({ materialId, ppm, toHundred, note }) => ({
      materialId,
      ppm: toHundred ? 0 : ppm,
      toHundred,
      note,
    })),
  );

function notesOn(phases: readonly FormulaPhase[], rows: readonly FormulaRow[]): string[] {
  const lines = phases.flatMap((phase) => phase.lines);
  const sum = lines.reduce((total, { ppm, toHundred }) => total + (toHundred ? 0 : ppm), 0);
  const isWhole = lines.some(({ toHundred }) => toHundred) || sum === WHOLE_PPM;
  const finer = rows.filter(({ percent }) => percent !== null && isFiner(percent)).map(({ line }) => line);
  const rounded = `Rounded to the four decimals that are kept: the share in line ${finer.join(', ')}.`;
  return [
    ...(isWhole ? [] : [`Its shares come to ${percentFromPpm(sum)} %.`]),
    ...(finer.length > 0 ? [rounded] : []),
  ];
}

/** Steps speak of phases: those that no longer are, are left out of them. */
function stepsOver(before: Formula, phases: readonly FormulaPhase[]): Formula['steps'] {
  const ids = new Set(phases.map(({ id }) => id));
  return before.steps.map((step) => ({ ...step, phaseIds: step.phaseIds.filter((id) => ids.has(id)) }));
}

/** Plans what some rows make: a new formula, one with other lines, one that is so already, or a refusal that says why. */
export function planFormula(row: TableRow, parts: FormulaPlanParts): Planned<Formula, FormulaRecord> {
  const { values, line } = row;
  const rows = (values.lines ?? []) as FormulaRow[];
  const name = textAt(values, 'formula.name') || textAt(values, 'formula.code');
  const faults = [...row.faults];
  const found = [values['formula.code'], values['formula.name']].flatMap((one) =>
    typeof one === 'string' ? [parts.known(one)] : [],
  );
  const [before = null, ...others] = found.find((all) => all.length > 0) ?? [];
  if (name === '') faults.push({ heading: 'Formula', message: 'No formula is named for these lines.' });
  if (rows.length === 0) faults.push({ heading: '', message: 'There is no line with a material here.' });
  if (others.length > 0)
    faults.push({
      heading: 'Formula',
      message: `${others.length + 1} formulas are called “${name}”. Give their codes.`,
    });
  const made = phasesOf(rows, before?.phases ?? [], parts);
  faults.push(...made.faults);
  const content: FormulaRecord = before
    ? { ...before, phases: made.phases, steps: stepsOver(before, made.phases) }
    : begun(values, made.phases);
  const read = faults.length > 0 ? null : enteredFormula.safeParse(content);
  if (read?.error) faults.push(...read.error.issues.map(({ message }) => ({ heading: '', message })));
  const isSame = before !== null && same(shown(before.phases), shown(made.phases));
  const kind: OutcomeKind = faults.length > 0 ? 'refused' : isSame ? 'same' : before ? 'changed' : 'new';
  const difference = {
    key: 'phases',
    label: 'Lines',
    before: linesText(before?.phases ?? [], parts),
    after: linesText(made.phases, parts),
  };
  return {
    outcome: {
      ...{ line, kind, name, faults },
      notes: kind === 'refused' ? [] : notesOn(made.phases, rows),
      differences: kind === 'changed' ? [difference] : [],
    },
    before,
    content: kind === 'new' || kind === 'changed' ? content : null,
  };
}
