import type { AskedAtStart } from '@service/open-at-start';

/** What main asks of the process that keeps the library, beside requests of the page. Paths stay between these two. */
export type ServiceCalls = {
  /** Opens what was asked for; the screens are answered from then on. Gives the library that is open, if any. */
  open(asked: AskedAtStart): Promise<string | null>;
  /** Opens another library in place of the present one. Gives its folder. @throws Problem when it cannot be opened */
  openOther(asked: AskedAtStart): Promise<string | null>;
  /** Makes a folder known under a token. */
  offer(folder: string): string;
  /** The folder behind a token, or null. */
  folder(token: string): string | null;
  /** Folds the log into the library's file, and goes on. */
  fold(): Promise<void>;
  /** Folds, gives the lock back, and has nothing open. */
  close(): Promise<void>;
};

/** Told whenever another library is opened, or none. */
export interface OpenedNotice {
  folder: string | null;
}

/** What the process is started with. */
export interface ServiceStart {
  documents: string;
  config: string;
  /** What it is going to be asked to open, so that it can begin. */
  asked: AskedAtStart;
}
