import { watch } from 'vue';
import { useRoute, useRouter } from 'vue-router';

/** Does what the address asks for with `do=…` (the palette's commands), once, and takes it out of the address. */
export function useAsked(asked: string, work: () => void): void {
  const route = useRoute();
  const router = useRouter();
  watch(
    () => route.query.do,
    (wanted) => {
      if (wanted !== asked) return;
      const { do: _done, ...query } = route.query;
      void router.replace({ ...route, query });
      work();
    },
    { immediate: true },
  );
}
