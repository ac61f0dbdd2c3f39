import { defineStore } from 'pinia';
import { computed, ref } from 'vue';
import { answer, service, type InferResponseType } from '../service/client';

export type LibraryStatus = InferResponseType<(typeof service.library)['$get'], 200>;

/** The title of what its page has to tell of the library's files; empty for nothing. */
function tidings(open: LibraryStatus['open']): string {
  if (!open) return '';
  const [note] = open.notes;
  if (note) return note.title;
  if (open.rewriteProblem) return 'The library file could not be rewritten.';
  return open.droppedBytes ? 'The last change before Stillroom stopped was not finished.' : '';
}

/** Which library is open, which were open lately, and what stood in the way of opening one. */
export const useLibrary = defineStore('library', () => {
  const status = ref<LibraryStatus | null>(null);
  const open = ref<LibraryStatus['open']>(null);
  const wasRead = ref('');
  /** What its page has to tell, told in the frame until that page was seen. */
  const toRead = computed(() => {
    const title = tidings(open.value);
    return title === wasRead.value ? '' : title;
  });
  const markAsRead = () => (wasRead.value = tidings(open.value));

  /** What is being opened and how much of it has been read, while nothing is open yet; null otherwise. */
  const opening = ref<LibraryStatus['opening']>(null);

  function take(now: LibraryStatus): void {
    status.value = now;
    open.value = now.open;
  }
  /** The library that is open, once what is being opened is there; each answer on the way tells how far it is. */
  async function opened(): Promise<LibraryStatus> {
    for (;;) {
      const now = await answer(service.library.$get());
      opening.value = now.open ? null : now.opening;
      if (!opening.value) return now;
    }
  }
  async function load(): Promise<void> {
    take(await opened());
  }
  /** Takes what was opened or closed. The first screen tells of one opened with a part of its log, before it gives way. */
  async function follow(): Promise<void> {
    const now = await opened();
    if (open.value || !now.open?.keptLog) take(now);
  }
  /** Looks whether another program changed the files; asked when the window is come back to. */
  async function check(): Promise<void> {
    take(await answer(service.library.check.$post()));
  }
  /** @param place the token of the folder to make it in; where libraries are made when left out */
  async function create(name: string, kind: 'empty' | 'demonstration', place?: string): Promise<void> {
    take(await answer(service.library.create.$post({ json: { name, kind, place } })));
  }
  async function openFolder(token: string): Promise<void> {
    take(await answer(service.library.open.$post({ json: { token } })));
  }
  async function close(): Promise<void> {
    take(await answer(service.library.close.$post()));
  }
  return {
    status,
    open,
    opening,
    toRead,
    markAsRead,
    load,
    follow,
    check,
    create,
    openFolder,
    close,
  };
});
