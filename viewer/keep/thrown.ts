/** What was thrown, in words. */
export const thrownWords = (error: unknown): string => (error instanceof Error ? error.message : String(error));
