import { onScopeDispose, ref, type Ref } from 'vue';

/** Whether a media query holds, kept up to date. */
export function useMediaQuery(query: string): Ref<boolean> {
  const list = window.matchMedia(query);
  const holds = ref(list.matches);
  const heard = (event: MediaQueryListEvent): void => {
    holds.value = event.matches;
  };
  list.addEventListener('change', heard);
  onScopeDispose(() => list.removeEventListener('change', heard));
  return holds;
}
