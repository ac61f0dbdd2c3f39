import { PRODUCT_TYPES, type ProductType } from '@core/formulas/formula';
import { foldedWords } from '@core/quantities/fold';
import { useQuery, useQueryCache } from '@pinia/colada';
import { computed } from 'vue';
import { useRoute, useRouter } from 'vue-router';
import { answer, service, type InferResponseType } from '../service/client';

export type FormulaSummary = InferResponseType<typeof service.formulas.$get, 200>[number];

const KEY = ['formulas'];

/** Forgets the formulas that were fetched, after one was added, changed or taken away. */
export function useFormulasChanged(): () => Promise<unknown> {
  const cache = useQueryCache();
  return () => cache.invalidateQueries({ key: KEY });
}

/** All formulas, and those that the address asks for: words, product type, archived ones or not. */
export function useFormulaList() {
  const route = useRoute();
  const router = useRouter();
  const { data, error, status } = useQuery({ key: KEY, query: () => answer(service.formulas.$get()) });

  const text = computed(() => (typeof route.query.text === 'string' ? route.query.text : ''));
  const productType = computed(() => PRODUCT_TYPES.find((type) => type === route.query.type) ?? null);
  const archived = computed(() => route.query.archived === 'yes');

  const searchable = computed(() =>
    (data.value ?? []).map((one) => ({
      one,
      named: foldedWords(`${one.name} ${one.code} ${one.purpose}`),
    })),
  );
  const shown = computed(() => {
    const words = foldedWords(text.value);
    const matches = searchable.value.filter(({ one, named }) => {
      if ((one.archived === 1) !== archived.value) return false;
      if (productType.value && one.productType !== productType.value) return false;
      return words.every((word) => named.some((known) => known.startsWith(word)));
    });
    return matches.map(({ one }) => one);
  });

  function change(
    part: { text?: string; type?: ProductType | null; archived?: boolean },
    step: 'replace' | 'push',
  ): void {
    const wanted = { text: text.value, type: productType.value, archived: archived.value, ...part };
    const query = {
      text: wanted.text || undefined,
      type: wanted.type ?? undefined,
      archived: wanted.archived ? 'yes' : undefined,
    };
    void router[step]({ name: 'formulas', query });
  }

  return { all: data, error, status, text, productType, archived, shown, change };
}
