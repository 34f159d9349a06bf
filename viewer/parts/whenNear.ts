/** How near a part of the page must come to the window before it is loaded. */
const NEAR = '600px';

/**
 * A part of the page that most look at later: it is loaded when it comes near the window. Until then only the newest thing
 * it is told is kept.
 */
export function whenNear<Part>(host: HTMLElement, load: () => Promise<Part>): (tell: (part: Part) => void) => void {
  let part: Part | undefined, newest: ((part: Part) => void) | undefined, loading = false;
  const begin = async (): Promise<void> => {
    if (part || loading) return;
    loading = true;
    try { part = await load(); watch.disconnect(); newest?.(part); }
    // What could not be loaded is tried again the next time it comes near.
    catch { loading = false; }
  };
  const watch = new IntersectionObserver((entries) => { if (entries.some(({ isIntersecting }) => isIntersecting)) void begin(); }, { rootMargin: NEAR });
  watch.observe(host);
  return (tell) => { newest = tell; if (part) tell(part); };
}
