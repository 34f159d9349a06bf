/** How near a part of the page must come to the window before it is loaded. */
const NEAR = '150px';

export interface NearPart<Part> {
  /** From now on it is watched for; before, an unfinished page is short and everything near. */
  readonly watch: () => void;
  /** Somebody wants it, wherever it is. */
  readonly want: () => void;
  /** Until it is loaded only the newest thing it is told is kept. */
  readonly tell: (what: (part: Part) => void) => void;
  /** Told only if it is loaded; what it is to be told first stays. */
  readonly remark: (what: (part: Part) => void) => void;
}

/** A part of the page that most look at later: it is loaded when it comes near the window. */
export function whenNear<Part>(host: HTMLElement, load: () => Promise<Part>): NearPart<Part> {
  let part: Part | undefined, newest: ((part: Part) => void) | undefined, loading = false;
  const begin = async (): Promise<void> => {
    if (part || loading) return;
    loading = true;
    try { part = await load(); seen.disconnect(); newest?.(part); }
    // What could not be loaded is tried again the next time it comes near.
    catch { loading = false; }
  };
  const seen = new IntersectionObserver((entries) => { if (entries.some(({ isIntersecting }) => isIntersecting)) void begin(); }, { rootMargin: NEAR });
  return { watch: () => { if (!part) seen.observe(host); }, want: () => void begin(), tell: (what) => { newest = what; if (part) what(part); }, remark: (what) => { if (part) what(part); } };
}
