/** Whether node_modules holds just what package-lock.json asks for. Compared by content, not by time. */
export function dependenciesAreCurrent(folder?: string): boolean;
/** Installs what is missing, without running any package's own scripts. */
export function ensureDependencies(): Promise<void>;
