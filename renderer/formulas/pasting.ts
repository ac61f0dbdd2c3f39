import {
  likelyMeaning,
  pastedLines,
  pastedShares,
  type AmountMeaning,
  type PastedLine,
  type PastedShare,
} from '@core/formulas/pasting/pasted-lines';
import { blankMaterial } from '@core/materials/material';
import { fold } from '@core/quantities/fold';
import { computed, ref, shallowRef, watch, type Ref } from 'vue';
import { v7 as newId } from 'uuid';
import { answer, problemOf, service, type InferResponseType, type ProblemDetails } from '../service/client';
import { useSaving } from '../shell/saving';
import type { PlacedPaste } from './paste-edit';

export type LineMatch = InferResponseType<(typeof service.materials.matches)['$post'], 200>[number];

/** What becomes of a pasted line: a material of the library by its id, a new one, or nothing. */
export const CREATE = 'create';
export const LEAVE_OUT = 'leave out';

/** What a new material is called. */
interface Names {
  tradeName: string;
  inci: string;
}

/** The answer to what is being typed comes once the typing pauses. */
const PAUSE_MS = 150;

/** The materials that lines mean, asked for whenever they change; none while the answer is under way. */
function useMatches(read: Ref<PastedLine[]>, failed: (problem: ProblemDetails) => void) {
  const matches = shallowRef<LineMatch[]>([]);
  let asked = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  async function look(): Promise<void> {
    const own = asked;
    try {
      const json = { lines: read.value.map((line) => line.names.map((name) => name.slice(0, 1_000))) };
      const found = json.lines.length ? await answer(service.materials.matches.$post({ json })) : [];
      if (own === asked) matches.value = found;
    } catch (error) {
      if (own === asked) failed(problemOf(error));
    }
  }
  watch(read, () => {
    asked += 1;
    matches.value = [];
    clearTimeout(timer);
    timer = setTimeout(() => void look(), PAUSE_MS);
  });
  return matches;
}

/** Makes new materials; trying again after a refusal makes none twice. */
function useMaker() {
  const saving = useSaving();
  const made = new Map<string, string>();
  return async ({ tradeName, inci }: Names): Promise<string> => {
    const key = `${fold(tradeName)}\n${fold(inci)}`;
    const json = blankMaterial(tradeName, inci);
    const id = made.get(key) ?? (await saving.track(answer(service.materials.$post({ json })))).id;
    made.set(key, id);
    return id;
  };
}

/** The shares of lines of which one alone is q.s. to 100: the first of them, where the formula has none. */
function markedShares(read: readonly PastedLine[], meaning: AmountMeaning, there: string | null) {
  const marked = there === null ? read.findIndex(({ toHundred }) => toHundred) : -1;
  return pastedShares(read, meaning).map((share, at): PastedShare & { toHundred: boolean } => {
    if (!read[at]?.toHundred || at === marked) return { ...share, toHundred: at === marked };
    const keeps = there ?? read[marked]?.tradeName ?? '';
    return { ppm: 0, toHundred: false, fault: `${keeps} is q.s. to 100: this comes in with 0 %.` };
  });
}

/** What was read, and what the reader decides of each line, by its place. */
function useReading(toHundredName: () => string | null, failed: (problem: ProblemDetails) => void) {
  const text = ref('');
  const meaning = ref<AmountMeaning>('per cent');
  const chosen = ref<Record<number, string>>({});
  const named = ref<Record<number, Names>>({});
  const read = computed(() => pastedLines(text.value));
  const matches = useMatches(read, failed);
  watch(read, () => {
    chosen.value = {};
    named.value = {};
    meaning.value = likelyMeaning(read.value);
  });
  const shares = computed(() => markedShares(read.value, meaning.value, toHundredName()));
  const lines = computed(() =>
    read.value.map((line, at) => {
      const match = matches.value[at] ?? null;
      const sure = match && match.by !== 'likeness' ? match.rows[0]?.id : undefined;
      const { ppm, fault, toHundred } = shares.value[at] ?? { ppm: 0, fault: null, toHundred: false };
      return {
        ...line,
        ...{ at, match, ppm, fault, toHundred },
        becomes: chosen.value[at] ?? (match ? (sure ?? CREATE) : ''),
        names: named.value[at] ?? { tradeName: line.tradeName, inci: line.inci },
      };
    }),
  );
  return { text, meaning, chosen, named, lines };
}

/**
 * Lines being pasted: what was read, which materials they mean, and what the reader decides of each.
 * @param toHundredName the line of the formula that is q.s. already, by its name; null where none is
 */
export function usePasting(toHundredName: () => string | null) {
  const saving = useSaving();
  const problem = ref<ProblemDetails | null>(null);
  const busy = ref(false);
  const keepPhases = ref(true);
  const reading = useReading(toHundredName, (failure) => (problem.value = failure));
  const make = useMaker();
  watch(reading.text, () => (problem.value = null));

  const taken = computed(() => reading.lines.value.filter(({ becomes }) => becomes !== LEAVE_OUT));
  const created = computed(() => taken.value.filter(({ becomes }) => becomes === CREATE));

  async function place(): Promise<PlacedPaste[]> {
    const placed: PlacedPaste[] = [];
    for (const { becomes, names, ppm, toHundred, note, phase } of taken.value) {
      const materialId = becomes === CREATE ? await make(names) : becomes;
      const line = { id: newId(), materialId, ppm, toHundred, note };
      placed.push({ line, phase: keepPhases.value ? phase : null });
    }
    return placed;
  }

  return {
    ...reading,
    ...{ keepPhases, problem, busy, taken, created },
    hasPhases: computed(() => reading.lines.value.some(({ phase }) => phase !== null)),
    ready: computed(() => taken.value.length > 0 && taken.value.every(({ becomes }) => becomes !== '')),
    /** Makes the materials that are new, and gives the lines; null where the library refuses one, which is then said. */
    async take(): Promise<PlacedPaste[] | null> {
      if (busy.value) return null;
      busy.value = true;
      problem.value = null;
      try {
        return await place();
      } catch (error) {
        problem.value = problemOf(error);
        saving.dismiss();
        return null;
      } finally {
        busy.value = false;
      }
    },
  };
}
