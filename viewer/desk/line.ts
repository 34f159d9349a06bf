/** A worker's line to the page: what it is asked and what it answers, told of their kind where the browser knows none. */
export interface Line<Ask, Answer> {
  postMessage: (answer: Answer, transfer?: Transferable[]) => void;
  onmessage: ((event: MessageEvent<Ask>) => void) | null;
}

export const lineToPage = <Ask, Answer>(): Line<Ask, Answer> => self as unknown as Line<Ask, Answer>;
