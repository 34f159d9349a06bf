/** A state and what was done to come to it. Steps of one drag share a key and become one. */
export interface Step<State> { readonly state: State; readonly label: string; readonly key?: string | undefined }

export interface Kept<State> { readonly steps: readonly Step<State>[]; readonly at: number }

export interface History<State> {
  readonly now: () => State;
  readonly edit: (state: State, label: string, key?: string) => void;
  /** The hand rests: the next edit is a step of its own. */
  readonly settle: () => void;
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  readonly undoLabel: () => string | undefined;
  readonly redoLabel: () => string | undefined;
  readonly kept: () => Kept<State>;
}

/** Undo and redo without limit. What was undone is lost only when something else is done instead. */
export function historyOf<State>(first: State | Kept<State>): History<State> {
  let { steps, at }: Kept<State> = isKept(first) ? first : { steps: [{ state: first, label: 'begun' }], at: 0 };
  const now = (): Step<State> => steps[at]!;
  return {
    now: () => now().state,
    edit: (state, label, key) => {
      const merges = key !== undefined && now().key === key && at === steps.length - 1 && at > 0;
      const before = steps.slice(0, merges ? at : at + 1);
      steps = [...before, { state, label, key }];
      at = steps.length - 1;
    },
    settle: () => { if (now().key !== undefined) steps = steps.map((step, i) => (i === at ? { state: step.state, label: step.label } : step)); },
    undo: () => { if (at === 0) return false; at--; return true; },
    redo: () => { if (at >= steps.length - 1) return false; at++; return true; },
    undoLabel: () => (at > 0 ? now().label : undefined),
    redoLabel: () => steps[at + 1]?.label,
    kept: () => ({ steps, at }),
  };
}

const isKept = <State>(value: State | Kept<State>): value is Kept<State> => typeof value === 'object' && value !== null && 'steps' in value && 'at' in value;
