import { frameAt } from '../../../src/walk/frame.ts';
import type { ShoeWalk } from '../../../src/walk/walking.ts';
import type { ShoeWalkShown, WalkShown } from '../../desk/protocol.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import { later, type Moment } from './clock.ts';
import { hipScale, hipStrip } from './hipStrip.ts';
import { reachOf, type Reach, type Scale } from './reach.ts';
import { readout } from './readout.ts';
import { rollControls } from './rollControls.ts';
import { rollWords } from './rollWords.ts';
import { shoePicture } from './shoePicture.ts';
import { standView } from './standView.ts';
import { differencesOf, figuresOf } from './stepTables.ts';

export interface RollingPart {
  /** The pair as it walks now; undefined where there is no shape. */
  readonly show: (shown: WalkShown | undefined, lengths: LengthUnit) => void;
}

/** Marks on the floor lie so far apart, in each unit, mm. */
const MARKS: Readonly<Record<LengthUnit, number>> = { mm: 50, in: 50.8 };
/** Longer than this between two pictures the page was away, s. */
const AWAY = 0.1;

/** Both shoes rolling through stance, to be played, held and scrubbed. It begins held. */
export function rollingPart(host: HTMLElement): RollingPart {
  const still = window.matchMedia('(prefers-reduced-motion: reduce)'), lanes = el('div', { class: 'lanes' }), below = el('div', { class: 'roll-figures' }), standing = el('div', { class: 'standing' }), none = el('p', { hidden: true }, 'No foot is measured on this sheet, so nobody walks here yet.');
  let moment: Moment = { share: 0, stood: 0 }, slow = true, playing = false, then = 0, drawn: readonly Lane[] = [];
  const controls = rollControls({
    play: (on) => { if (on && moment.share >= 1) moment = { share: 0, stood: 0 }; run(on); },
    slow: (on) => { slow = on; },
    goTo: (share) => { run(false); moment = { share, stood: 0 }; lay(); },
    shows: (name, on) => lanes.classList.toggle(`without-${name.split(' ')[0]}`, !on),
  });
  const hide = (is: boolean): void => { for (const part of [controls.box, lanes, below, standing]) part.hidden = is; };
  hide(true);
  host.append(none, controls.box, lanes, below, standing);

  function run(on: boolean): void {
    const before = playing;
    playing = on;
    controls.playing(on);
    if (on && !before) { then = performance.now(); requestAnimationFrame(next); }
  }
  function next(time: number): void {
    if (!playing) return;
    const seconds = Math.min(AWAY, Math.max(0, time - then) / 1000);
    then = time;
    // While a hand drags, what is seen here is of the sheet before: it stands still and costs nothing.
    if (document.documentElement.dataset.rested === 'true') { moment = later(moment, seconds, { slow, once: still.matches }); lay(); }
    if (still.matches && moment.share >= 1) run(false); else requestAnimationFrame(next);
  }
  function lay(): void {
    for (const lane of drawn) lane.lay(moment.share);
    controls.at(moment.share);
  }
  return {
    show: (shown, lengths) => {
      const nobody = shown?.shoes.length === 0;
      none.hidden = !nobody;
      hide(nobody || !shown);
      if (!shown || nobody) { run(false); drawn = []; return; }
      const { walking: { shoes }, shoes: told } = shown, reach = reachOf(shown.walking), scale = hipScale(shoes, lengths);
      drawn = told.flatMap((one) => { const walk = shoes.find(({ side }) => side === one.side); return walk ? [laneOf(one, walk, { reach, scale }, lengths)] : []; });
      lanes.replaceChildren(...drawn.map(({ box }) => box));
      below.replaceChildren(rollWords(shown, MARKS[lengths], lengths), el('div', { class: 'tables' }, ...told.map(figuresOf)), ...differencesOf(shown));
      standing.replaceChildren(el('h3', {}, 'Standing still'), el('div', { class: 'stands-row' }, ...standView(shown.standing)));
      controls.comparing(shoes.some(({ kind }) => kind === 'rocker'));
      lay();
    },
  };
}

interface Lane { readonly box: HTMLElement; readonly lay: (share: number) => void }

/** What all lanes have in common, so that they can be compared. */
interface Common { readonly reach: Reach; readonly scale: Scale }

function laneOf(shown: ShoeWalkShown, walk: ShoeWalk, { reach, scale }: Common, lengths: LengthUnit): Lane {
  const picture = shoePicture(shown, walk, reach, MARKS[lengths]), hip = hipStrip(walk, scale, lengths), read = readout(shown, lengths);
  return {
    box: el('div', { class: 'lane' }, el('h3', {}, `${shown.side === 'left' ? 'Left' : 'Right'} shoe: ${walk.kind === 'rocker' ? 'rolls' : 'bends at the ball'}`), picture.svg, hip.box, read.table),
    lay: (share) => {
      const own = frameAt(walk.own, share), ordinary = walk.kind === 'rocker' ? frameAt(walk.ordinary, share) : own;
      picture.lay(own, ordinary);
      hip.lay(share);
      read.lay(own, ordinary);
    },
  };
}
