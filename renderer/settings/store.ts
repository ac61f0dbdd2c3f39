import type { Settings } from '@core/settings/settings';
import { settings as settingsSchema } from '@core/settings/settings';
import { defineStore } from 'pinia';
import { ref, watchEffect } from 'vue';

/** The library's settings, and the theme they ask for. */
export const useSettings = defineStore('settings', () => {
  const current = ref<Settings>(settingsSchema.parse({}));

  /** Takes the settings of a library that was opened. */
  function take(settings: Settings): void {
    current.value = settings;
  }

  const systemDark = window.matchMedia('(prefers-color-scheme: dark)');
  const prefersDark = ref(systemDark.matches);
  systemDark.addEventListener('change', (event) => (prefersDark.value = event.matches));
  watchEffect(() => {
    const { theme, languageRegion } = current.value;
    const dark = theme === 'dark' || (theme === 'system' && prefersDark.value);
    document.documentElement.dataset.theme = dark ? 'dark' : 'light';
    document.documentElement.dataset.region = languageRegion;
  });

  return { current, take };
});
