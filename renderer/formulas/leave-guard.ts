import { onBeforeUnmount, onMounted, ref } from 'vue';
import { onBeforeRouteLeave, useRouter, type RouteLocationRaw } from 'vue-router';
import type { FormulaDraft } from './draft';

/** Saves on the way out. When that fails the maker is asked, so that nothing typed is lost without a word. */
export function useLeaveGuard(draft: FormulaDraft) {
  const router = useRouter();
  const asking = ref(false);
  let wanted: RouteLocationRaw = '/formulas';
  let leaving = false;

  onBeforeRouteLeave(async (to) => {
    if (leaving || (await draft.saveNow())) return true;
    wanted = to.fullPath;
    asking.value = true;
    return false;
  });

  function leave(): void {
    leaving = true;
    asking.value = false;
    void router.push(wanted);
  }

  function unloading(event: BeforeUnloadEvent): void {
    if (!draft.unsaved()) return;
    void draft.saveNow();
    event.preventDefault();
  }
  onMounted(() => window.addEventListener('beforeunload', unloading));
  onBeforeUnmount(() => window.removeEventListener('beforeunload', unloading));
  return { asking, leave };
}
