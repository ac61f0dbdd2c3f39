/** Whether a window can be shown at all. */
export function hasDisplay(platform?: NodeJS.Platform, env?: Record<string, string | undefined>): boolean;
/** The Electron program, or undefined where its runtime has not been fetched. */
export function electronProgram(): string | undefined;
/** The Electron program, fetched once if need be. */
export function obtainElectron(): Promise<string | undefined>;
