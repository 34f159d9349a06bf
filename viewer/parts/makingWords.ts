import type { MakingName } from '../../src/fitting/words.ts';

/** What may be made besides the soles, as a maker calls it, and what comes of it. */
export const MAKING_WORDS: Readonly<Record<MakingName, { readonly title: string; readonly about: string }>> = {
  mould: { title: 'mould', about: 'cavity and lid to cast the foam body or the whole sole in' },
  block: { title: 'router block', about: 'the foam body in a block, with its set-ups for the router' },
  print: { title: 'for the printer', about: 'the sole as a printer takes it, in two parts where the bed is small' },
  jig: { title: 'build-up jig', about: 'a cradle for the lasted shoe, and rails that carry the arcs' },
  gauges: { title: 'gauges', about: 'arcs and heights to hold against the work' },
  stack: { title: 'stack of sheets', about: 'the sole built up from the sheets in the rack' },
  plies: { title: 'plies of the stiffener', about: 'outlines to cut, cloth and resin, how they are laid, a bench test' },
  templates: { title: 'paper templates', about: 'in true size, over several pages where need be' },
  wedges: { title: 'trial wedges', about: 'to try apex and standing flat before the sole is made' },
  card: { title: 'job card', about: 'walks with the shoes through the workshop' },
};
