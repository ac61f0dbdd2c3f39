import {
  likelyMeaning,
  pastedLines,
  pastedShares,
  type AmountMeaning,
  type PastedShare,
} from '@core/formulas/pasting/pasted-lines';
import { blankMaterial } from '@core/materials/material';
import { fold } from '@core/quantities/fold';
import { computed, ref, shallowRef, watch } from 'vue';
import { v7 as newId } from 'uuid';
import { answer, problemOf, service, type InferResponseType, type ProblemDetails } from '../service/client';
import { useSaving } from '../shell/saving';
import type { PlacedPaste } from './paste-edit';

export type LineMatch = InferResponseType<(typeof service.materials.matches)['$post'], 200>[number];

/** What becomes of a pasted line: a material of the library by its id, a new one, or nothing. */
export const CREATE = 'create';
export const LEAVE_OUT = 'leave out';

/** The answer to what is being typed comes once the typing pauses. */
const PAUSE_MS = 150;

/**
 * Lines being pasted: what was read, which materials they mean, and what the reader decides of each.
 * @param toHundredName the line of the formula that is q.s. already, by its name; null where none is
 */
export function usePasting(toHundredName: () => string | null) {
  const saving = useSaving();
  const text = ref('');
  const meaning = ref<AmountMeaning>('per cent');
  const keepPhases = ref(true);
  const matches = shallowRef<LineMatch[]>([]);
  /** What the reader chose, and how a new material is to be called, by the line's place. */
  const chosen = ref<Record<number, string>>({});
  const named = ref<Record<number, { tradeName: string; inci: string }>>({});
  const problem = ref<ProblemDetails | null>(null);
  const busy = ref(false);
  /** The materials made so far, by their names: trying again after a refusal makes none twice. */
  const made = new Map<string, string>();

  const read = computed(() => pastedLines(text.value));
  /** The line that takes the mark: the first of them, where the formula has none. */
  const marked = computed(() =>
    toHundredName() === null ? read.value.findIndex(({ toHundred }) => toHundred) : -1,
  );
  const shares = computed(() =>
    pastedShares(read.value, meaning.value).map((share, at): PastedShare => {
      if (!read.value[at]?.toHundred || at === marked.value) return share;
      const keeps = toHundredName() ?? read.value[marked.value]?.tradeName ?? '';
      return { ppm: 0, fault: `${keeps} is q.s. to 100: this comes in with 0 %.` };
    }),
  );
  const hasPhases = computed(() => read.value.some(({ phase }) => phase !== null));
  const lines = computed(() =>
    read.value.map((line, at) => {
      const match = matches.value[at] ?? null;
      const sure = match && match.by !== 'likeness' ? match.rows[0]?.id : undefined;
      return {
        ...line,
        at,
        toHundred: at === marked.value,
        match,
        share: shares.value[at] ?? { ppm: 0, fault: null },
        becomes: chosen.value[at] ?? (match ? (sure ?? CREATE) : ''),
        names: named.value[at] ?? { tradeName: line.tradeName, inci: line.inci },
      };
    }),
  );
  const taken = computed(() => lines.value.filter(({ becomes }) => becomes !== LEAVE_OUT));
  const created = computed(() => taken.value.filter(({ becomes }) => becomes === CREATE));
  const ready = computed(() => taken.value.length > 0 && taken.value.every(({ becomes }) => becomes !== ''));

  let asked = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  async function match(): Promise<void> {
    const own = (asked += 1);
    try {
      const json = { lines: read.value.map((line) => line.names.map((name) => name.slice(0, 1_000))) };
      const found = json.lines.length ? await answer(service.materials.matches.$post({ json })) : [];
      if (own === asked) matches.value = found;
    } catch (error) {
      if (own === asked) problem.value = problemOf(error);
    }
  }
  watch(text, () => {
    asked += 1;
    matches.value = [];
    chosen.value = {};
    named.value = {};
    problem.value = null;
    meaning.value = likelyMeaning(read.value);
    clearTimeout(timer);
    timer = setTimeout(() => void match(), PAUSE_MS);
  });

  async function materialFor(line: (typeof lines.value)[number]): Promise<string> {
    if (line.becomes !== CREATE) return line.becomes;
    const { tradeName, inci } = line.names;
    const key = `${fold(tradeName)}\n${fold(inci)}`;
    const id =
      made.get(key) ??
      (await saving.track(answer(service.materials.$post({ json: blankMaterial(tradeName, inci) })))).id;
    made.set(key, id);
    return id;
  }

  /** Makes the materials that are new, and gives the lines; null where the library refuses one, which is then said. */
  async function take(): Promise<PlacedPaste[] | null> {
    if (busy.value) return null;
    busy.value = true;
    problem.value = null;
    try {
      const placed: PlacedPaste[] = [];
      for (const line of taken.value) {
        const materialId = await materialFor(line);
        const { toHundred, note, share } = line;
        placed.push({
          line: { id: newId(), materialId, ppm: share.ppm, toHundred, note },
          phase: keepPhases.value ? line.phase : null,
        });
      }
      return placed;
    } catch (error) {
      problem.value = problemOf(error);
      saving.dismiss();
      return null;
    } finally {
      busy.value = false;
    }
  }

  return {
    ...{ text, meaning, keepPhases, chosen, named, problem, busy },
    ...{ lines, taken, created, hasPhases, ready, take },
  };
}
