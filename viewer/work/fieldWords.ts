/** What a field is called on the page, where its name on the sheet taken apart into words would not do. */
export const FIELD_WORDS: Readonly<Record<string, string>> = {
  'job.reference': 'job number', 'job.prescriber': 'prescribed by', 'job.prescribed': 'prescribed on',
  'wearer.crotchHeight': 'floor to crotch', 'wearer.stature': 'height of the client', 'wearer.mass': 'mass of the client',
  'wearer.legDifference.correct': 'to correct', 'wearer.legDifference.shorter': 'shorter leg', 'wearer.legDifference.found': 'found by',
  'foot.stiff.joint': 'what must not bend', 'foot.stiff.state': 'why', 'foot.length': 'foot length', 'foot.ballInner': 'heel to big-toe joint', 'foot.ballOuter': 'heel to little-toe joint',
  'foot.pivotForward': 'heel to ankle pivot', 'foot.pivotHeight': 'ankle pivot height', 'foot.malleolusHeight': 'outer ankle bone height',
  'foot.hipHeight': 'hip height', 'foot.hipAhead': 'hip ahead of the ankle', 'foot.ankleAngle': 'fixed ankle angle',
  'foot.heelPlates.height': 'height of the plates', 'foot.heelPlates.span': 'span of the board', 'foot.heelPlates.hipAhead': 'hip ahead, on the plates',
  'foot.prosthesis.heelRise': 'aligned heel rise', 'foot.prosthesis.shankLean': 'aligned lean of the shank',
  'foot.strikeAngle': 'tilt at heel strike', 'foot.toeOffAngle': 'tilt at toe-off',
  'last.length': 'last length', 'last.pitch': 'pitch', 'last.toeSpring': 'toe spring of the last', 'last.heelBack': 'heel stands out behind', 'last.inflare': 'in-flare',
  upperWeight: 'weight of the upper',
  'order.toe.rule': 'toe arc by', 'order.toe.radius': 'toe radius', 'order.toe.toeSpring': 'wanted toe spring', 'order.toe.toeOffAngle': 'wanted slope at the tip', 'order.toe.endAngle': 'toe arc ends at',
  'order.crestAngle': 'crest to the long axis', 'order.seatHeightAtLeast': 'seat at least', 'order.seatHeightNow': 'seat stands now', 'order.ballHeightNow': 'ball stands now', 'order.tip': 'left at the tip',
  'order.taper.heelInner': 'heel, inner wall', 'order.taper.heelOuter': 'heel, outer wall', 'order.taper.foreInner': 'forepart, inner wall', 'order.taper.foreOuter': 'forepart, outer wall',
  'making.chordGap': 'fineness of the solids', 'making.printBed.x': 'bed width', 'making.printBed.y': 'bed depth', 'making.printBed.z': 'bed height',
};
