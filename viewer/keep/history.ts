/** A state and what was done to come to it. */
export interface Step<State> { readonly state: State; readonly label: string }

/** All steps, the undone ones too, and the one that is now. */
export interface Kept<State> { readonly steps: readonly Step<State>[]; readonly at: number }

export interface History<State> {
  readonly now: () => State;
  /** A step forward. Edits of one key that follow each other are one step until the hand rests; an edit that changes nothing is none. */
  readonly edit: (state: State, label: string, key?: string) => void;
  /** The hand rests: the next edit is a step of its own. */
  readonly settle: () => void;
  /** What was edited since the hand last rested was not meant: it leaves no step, and what had been undone before it is back. False where there is none. */
  readonly drop: () => boolean;
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  readonly undoLabel: () => string | undefined;
  readonly redoLabel: () => string | undefined;
  readonly kept: () => Kept<State>;
}

/** Undo and redo without limit. What was undone is lost only when something else is done instead. */
export const historyOf = <State>(first: State): History<State> => historyAgain({ steps: [{ state: first, label: 'begun' }], at: 0 });

/** A history that was kept goes on where it stood; the first edit is a step of its own. */
export function historyAgain<State>({ steps, at }: Kept<State>): History<State> {
  let merging: string | undefined, before: Kept<State> = { steps, at };
  const goTo = (step: number): boolean => {
    merging = undefined;
    if (steps[step] === undefined) return false;
    at = step;
    return true;
  };
  return {
    now: () => steps[at]!.state,
    edit: (state, label, key) => {
      if (state === steps[at]!.state) return;
      const merges = key !== undefined && key === merging;
      if (!merges) before = { steps, at };
      steps = [...steps.slice(0, merges ? at : at + 1), { state, label }];
      at = steps.length - 1;
      merging = key;
    },
    settle: () => { merging = undefined; },
    drop: () => {
      if (merging === undefined) return false;
      ({ steps, at } = before);
      merging = undefined;
      return true;
    },
    undo: () => goTo(at - 1),
    redo: () => goTo(at + 1),
    undoLabel: () => (at > 0 ? steps[at]!.label : undefined),
    redoLabel: () => steps[at + 1]?.label,
    kept: () => ({ steps, at }),
  };
}
