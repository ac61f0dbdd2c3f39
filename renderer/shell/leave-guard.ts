import { onBeforeUnmount, onMounted, ref, watch } from 'vue';
import {
  onBeforeRouteLeave,
  onBeforeRouteUpdate,
  useRouter,
  type RouteLocationNormalized,
  type RouteLocationRaw,
} from 'vue-router';
import { reach } from '../service/reach';

/** What is being written on a screen. */
export interface Writing {
  /** Saves what is not saved yet; false when some of it was refused. */
  saveNow(): Promise<boolean>;
  unsaved(): boolean;
  /** Whether something was refused, or cannot be read, and so will not be saved as it stands. */
  stuck(): boolean;
}

/** Whether an address of the same screen shows something else. */
type WayOut = (to: RouteLocationNormalized, from: RouteLocationNormalized) => boolean;

/**
 * Saves on the way out, and when Stillroom answers again. When that fails the maker is asked, so that nothing typed is
 * lost without a word.
 */
export function useLeaveGuard(
  writing: Writing,
  isWayOut: WayOut = (to, from) => to.params.id !== from.params.id,
) {
  const router = useRouter();
  const asking = ref(false);
  let wanted: RouteLocationRaw = '/';
  let leaving = false;

  async function mayGo(to: RouteLocationNormalized): Promise<boolean> {
    if (leaving || (await writing.saveNow())) return true;
    wanted = to.fullPath;
    asking.value = true;
    return false;
  }
  onBeforeRouteLeave(mayGo);
  // Only another material or formula at the same kind of address is a way out.
  onBeforeRouteUpdate((to, from) => !isWayOut(to, from) || mayGo(to));

  function leave(): void {
    leaving = true;
    asking.value = false;
    void router.push(wanted);
  }

  function unloading(event: BeforeUnloadEvent): void {
    if (!writing.unsaved()) return;
    void writing.saveNow();
    // What is only on its way is saved after the page has gone.
    if (writing.stuck()) event.preventDefault();
  }
  watch(reach, (now) => now === 'answers' && writing.unsaved() && void writing.saveNow());
  onMounted(() => window.addEventListener('beforeunload', unloading));
  onBeforeUnmount(() => window.removeEventListener('beforeunload', unloading));
  return { asking, leave };
}
