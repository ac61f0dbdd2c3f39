import { zipSync, type Zippable } from 'fflate';
import { computed, ref, shallowRef } from 'vue';
import { problemOf, type ProblemDetails } from '../service/client';
import { fetchSheet, subjectName, type Sheet, type SheetRequest } from './sheet-request';

export interface FailedSheet {
  request: SheetRequest;
  name: string;
  problem: ProblemDetails;
}

/** Makes sheets one after another, with progress and cancel; what is made is kept even when others fail. */
export function useManySheets() {
  const made = shallowRef<Sheet[]>([]);
  const failed = shallowRef<FailedSheet[]>([]);
  const total = ref(0);
  const done = ref(0);
  const state = ref<'ready' | 'making' | 'cancelled' | 'made'>('ready');
  let stopper = new AbortController();

  async function one(request: SheetRequest, signal: AbortSignal): Promise<void> {
    try {
      made.value = [...made.value, await fetchSheet(request, signal)];
    } catch (error) {
      if (signal.aborted) return;
      failed.value = [
        ...failed.value,
        { request, name: await subjectName(request), problem: problemOf(error) },
      ];
    }
  }

  async function run(requests: readonly SheetRequest[]): Promise<void> {
    stopper = new AbortController();
    const { signal } = stopper;
    total.value = requests.length;
    done.value = 0;
    state.value = 'making';
    for (const request of requests) {
      await one(request, signal);
      if (signal.aborted) return;
      done.value += 1;
    }
    state.value = 'made';
  }

  function start(requests: readonly SheetRequest[]): Promise<void> {
    made.value = [];
    failed.value = [];
    return run(requests);
  }

  /** Tries the sheets with unprintable signs again, with those signs printed as their codes. */
  function retryWithReplacements(): Promise<void> {
    const again = failed.value.filter((one) => one.problem.code === 'unprintable-text');
    failed.value = failed.value.filter((one) => !again.includes(one));
    return run(again.map(({ request }) => ({ ...request, replaceUnprintable: true })));
  }

  function cancel(): void {
    if (state.value !== 'making') return;
    stopper.abort();
    state.value = 'cancelled';
  }

  function reset(): void {
    stopper.abort();
    made.value = [];
    failed.value = [];
    state.value = 'ready';
  }

  const replaceable = computed(() => failed.value.some((one) => one.problem.code === 'unprintable-text'));
  return { made, failed, total, done, state, replaceable, start, retryWithReplacements, cancel, reset };
}

/** The sheets in one ZIP; two of one name are told apart by a number. PDFs are compressed already, so are stored. */
export function zipSheets(sheets: readonly Sheet[]): Uint8Array<ArrayBuffer> {
  const files: Zippable = {};
  for (const { fileName, bytes } of sheets) {
    let name = fileName;
    for (let n = 2; name in files; n += 1) name = fileName.replace(/(\.pdf)?$/i, ` (${n})$1`);
    files[name] = [bytes, { level: 0 }];
  }
  return zipSync(files) as Uint8Array<ArrayBuffer>;
}
