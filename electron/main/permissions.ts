import type { Session } from 'electron';
import { isOurs } from './origin';

/** The one permission the page has: to put text on the clipboard. */
const GRANTED = 'clipboard-sanitized-write';

/** Whether a page of this origin may do this. */
export function isPermitted(permission: string, requester: string): boolean {
  return permission === GRANTED && isOurs(requester);
}

/** Answers every request for a permission, a device or the screen. */
export function answerPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    answer(isPermitted(permission, details.requestingUrl));
  });
  session.setPermissionCheckHandler((_contents, permission, origin) => isPermitted(permission, origin));
  session.setDevicePermissionHandler(() => false);
  session.setBluetoothPairingHandler((_details, answer) => answer({ confirmed: false }));
  session.setDisplayMediaRequestHandler((_request, answer) => answer(null));
}
