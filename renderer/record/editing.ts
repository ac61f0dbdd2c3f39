import { ref } from 'vue';

/** Outlives a reload of the page, not the window. */
const KEPT = 'stillroom.edited';

/** The record that its maker asked to edit, by kind and id; all others are read. */
const edited = ref(sessionStorage.getItem(KEPT) ?? '');

export const isEdited = (key: string): boolean => edited.value === key;

/** Opens a record for editing, or the one that is opened next: one just added has nothing to read yet. */
export function beginEditing(key: string): void {
  edited.value = key;
  sessionStorage.setItem(KEPT, key);
}

export function endEditing(key: string): void {
  if (edited.value === key) beginEditing('');
}
