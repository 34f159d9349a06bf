/** The sheets that come with the project, each loaded only when it is asked for. */
const SHEETS = import.meta.glob<string>('../samples/*/sheet.json', { query: '?raw', import: 'default' });

export interface Sample { readonly name: string; readonly load: () => Promise<string> }

export const SAMPLES: readonly Sample[] = Object.entries(SHEETS).map(([path, load]) => ({ name: path.split('/').at(-2)!.replace(/-/g, ' '), load }));
