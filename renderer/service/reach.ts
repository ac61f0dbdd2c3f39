import { ref } from 'vue';

/**
 * Whether the service answers this page: it does; nothing answers at its address; or a Stillroom that was started
 * anew does, and wants the key of its own address.
 */
export type Reach = 'answers' | 'silent' | 'key needed';
export const reach = ref<Reach>('answers');

/** The key in what was pasted: a whole address of this page's own host, or the key alone. */
export function keyIn(pasted: string, origin: string): { key: string } | { elsewhere: string } | null {
  const text = pasted.trim();
  if (/^[\w-]{20,}$/.test(text)) return { key: text };
  if (!URL.canParse(text)) return null;
  const address = new URL(text);
  const key = address.searchParams.get('key');
  if (!key) return null;
  return address.origin === origin ? { key } : { elsewhere: address.origin };
}
