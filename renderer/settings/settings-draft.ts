import { SETTINGS } from '@core/settings/noun';
import { settings as settingsSchema, type Settings } from '@core/settings/settings';
import type { NounWords } from '../record/clash-words';
import type { Held } from '../record/draft-source';
import { useDraft } from '../record/use-draft';
import { answer, service } from '../service/client';
import { useSettings } from './store';

/** The library's settings being edited; what is saved holds on every screen at once. */
export function useSettingsDraft() {
  const store = useSettings();
  const held = (content: Settings): Held<Settings> => {
    store.take(content);
    return { revision: 1, content };
  };
  const { draft, kept, load, takeKept } = useDraft<Settings>({
    kind: 'settings',
    id: '',
    schema: settingsSchema,
    shape: {},
    nameOf: () => 'Settings',
    read: async () => held(await answer(service.settings.$get())),
    write: async (content, over) =>
      held(await answer(service.settings.$put({ json: { over: over.content, content } }))),
  });
  const words: NounWords = { fields: SETTINGS.fields };
  return { draft, kept, load, takeKept, words };
}
