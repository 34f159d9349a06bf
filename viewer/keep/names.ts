/** A name no other job has. Not `randomUUID`: a page that comes over plain http from another machine of the workshop has none. */
export const freshName = (): string => Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
