import { expect, test, vi } from 'vitest';
import { answers, app, BrowserWindow, done, handlers, session } from './electron-double';
import { UtilityProcessDouble } from './utility-process-double';

vi.mock('electron', () => import('./electron-double'));

test('a second instance ends at once: no window, no service, no library', async () => {
  answers.lock = false;
  await import('../../electron/main/index');
  await new Promise((resume) => setTimeout(resume, 50));
  expect(done.filter((step) => !step.startsWith('app.requestSingleInstanceLock'))).toEqual([
    'app.setName Stillroom',
    'app.quit',
  ]);
  expect(UtilityProcessDouble.forked).toEqual([]);
  expect(BrowserWindow.opened).toEqual([]);
  expect(session.defaultSession.schemeHandler).toBeUndefined();
  expect(handlers.size).toBe(0);
  expect(app.listenerCount('web-contents-created')).toBe(0);
});
