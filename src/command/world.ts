/** All that the command needs from the machine it runs on. Tests put their faults in here. */
export interface World {
  readonly out: Screen;
  readonly err: Screen;
  /** The folder the command was called in; paths that are not absolute start here. */
  readonly here: string;
  /** The folder of the installed package, where its samples lie. */
  readonly home: string;
  readonly disk: Disk;
  readonly process: { readonly id: number; readonly isRunning: (id: number) => boolean };
  /**
   * Does work that may not be cut off in the middle: while it runs, a signal to end aborts the signal handed to the work
   * (the reason is the signal's name) and nothing else. At all other times a signal ends the command at once.
   */
  readonly interruptible: <T>(work: (signal: AbortSignal) => Promise<T>) => Promise<T>;
}

export interface Screen {
  readonly write: (text: string) => void;
  /** False in a pipe or a file. */
  readonly isTerminal: boolean;
  /** Letters on a line. */
  readonly columns: number;
  /** Whether words may be coloured. */
  readonly colour: boolean;
}

export interface Entry { readonly kind: 'file' | 'folder' | 'link' | 'other'; readonly size: number }

/** What is done on disk. All fail with the errors of Node's file system, which have a `code`. */
export interface Disk {
  /** What lies at a path; undefined where nothing does. */
  readonly look: (path: string, links: 'follow' | 'show') => Promise<Entry | undefined>;
  readonly read: (path: string) => Promise<Uint8Array>;
  readonly list: (folder: string) => Promise<string[]>;
  /** Fails where something lies already. */
  readonly makeFolder: (path: string) => Promise<void>;
  /** Writes a new file and waits until it is on the disk, not only on its way there. */
  readonly write: (path: string, bytes: Uint8Array) => Promise<void>;
  /** Waits until the names in a folder are on the disk. */
  readonly settle: (folder: string) => Promise<void>;
  readonly rename: (from: string, to: string) => Promise<void>;
  /** Removes a file, or a folder with all it holds. Quiet where nothing lies. */
  readonly remove: (path: string) => Promise<void>;
}
