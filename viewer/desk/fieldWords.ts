/** Of what may be changed, the two ends it may be changed to. */
const spanWords = (names: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(names).flatMap(([field, name]) => [[`order.targets.spans.${field}.least`, `${name} at least`], [`order.targets.spans.${field}.most`, `${name} at most`]]));

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
  'foot.ankleRange': 'movement left in the ankle', 'foot.walk.angles.contact': 'shank at heel contact', 'foot.walk.angles.midStance': 'shank at mid-stance', 'foot.walk.angles.toeOff': 'shank at toe-off', 'foot.walk.table': 'table of the walk',
  'last.length': 'last length', 'last.pitch': 'pitch', 'last.toeSpring': 'toe spring of the last', 'last.heelBack': 'heel stands out behind', 'last.inflare': 'in-flare',
  upperWeight: 'weight of the upper',
  'order.toe.rule': 'toe arc by', 'order.toe.radius': 'toe radius', 'order.toe.toeSpring': 'wanted toe spring', 'order.toe.toeOffAngle': 'wanted slope at the tip', 'order.toe.endAngle': 'toe arc ends at',
  'order.crestAngle': 'crest to the long axis', 'order.seatHeightAtLeast': 'seat at least', 'order.seatHeightNow': 'seat stands now', 'order.ballHeightNow': 'ball stands now', 'order.tip': 'left at the tip',
  'order.taper.heelInner': 'heel, inner wall', 'order.taper.heelOuter': 'heel, outer wall', 'order.taper.foreInner': 'forepart, inner wall', 'order.taper.foreOuter': 'forepart, outer wall',
  'order.edgeBeyond.heel': 'edge stands out, heel', 'order.edgeBeyond.ball': 'edge stands out, ball', 'order.edgeBeyond.toe': 'edge stands out, toe',
  'order.outsole.thickness': 'outsole thickness', 'order.outsole.material': 'outsole', 'order.stiffener': 'stiffener thickness',
  'order.stiffener.wanted': 'how stiff', 'order.stiffener.bendAtMost': 'bends at most', 'order.stiffener.resin': 'resin to 1 g of cloth', 'order.stiffener.coreThickness': 'core thickness',
  'order.stiffener.edges': 'edges turned up', 'order.stiffener.underFoam': 'plies under the foam too', 'order.stiffener.thicknessAtMost': 'thick at most', 'order.stiffener.plies': 'plies as laid',
  'order.stiffener.bench.mass': 'mass hung on it', 'order.stiffener.bench.droop': 'drooped by', 'order.stiffener.bench.lever': 'hung ahead of the ball',
  'order.stiffener.ownCloth.areal': 'weight of 1 m²', 'order.stiffener.ownCloth.thickness': 'ply thickness', 'order.stiffener.measuredPly.thickness': 'ply thickness',
  'order.stiffener.measuredPly.along': 'modulus along', 'order.stiffener.measuredPly.across': 'modulus across', 'order.stiffener.measuredPly.shear': 'shear modulus', 'order.stiffener.measuredPly.poisson': 'Poisson ratio',
  'order.stiffener.measuredPly.pulled': 'fails pulled by', 'order.stiffener.measuredPly.pressed': 'fails pressed by', 'order.stiffener.measuredPly.sheared': 'fails sheared by', 'order.stiffener.ownCore.shear': 'shear modulus', 'order.stiffener.ownCore.shearStrength': 'shear strength',
  'order.targets.seatHeightAtMost': 'seat at most', 'order.targets.ballHeightAtMost': 'ball at most', 'order.targets.ballThicknessAtMost': 'edge at the ball at most', 'order.targets.tipAtMost': 'tip at most', 'order.targets.tipWanted': 'tip wanted',
  'order.targets.toeSpringAtLeast': 'toe spring of the shoe at least', 'order.targets.toeSpringAtMost': 'toe spring of the shoe at most', 'order.targets.weightAtMost': 'sole weighs at most', 'order.targets.seatDifferenceAtMost': 'seats differ by at most', 'order.targets.free': 'may be changed',
  ...spanWords({ apex: 'apex', toeRadius: 'toe radius', standingFlat: 'standing flat', strikeAngle: 'strike angle', pitch: 'pitch', lastSpring: 'last spring' }),
  'order.minima.edge': 'least, behind the strike point', 'order.minima.seat': 'least, seat', 'order.minima.waist': 'least, waist', 'order.minima.tread': 'least, tread', 'order.minima.tip': 'least, tip',
  'last.heights': 'measured heights', 'last.heights[0]': 'forward', 'last.heights[1]': 'up',
  'making.chordGap': 'fineness of the solids', 'making.tool.diameter': 'cutter diameter', 'making.tool.reach': 'cutter reach', 'making.tool.end': 'end of the cutter',
  'making.printBed.x': 'bed width', 'making.printBed.y': 'bed depth', 'making.printBed.z': 'bed height',
  'making.board.thickness': 'board thickness', 'making.board.length': 'board length', 'making.board.width': 'board width', 'making.board.kerf': 'width of the cut', 'making.board.clearance': 'play in a slot', 'making.board.apart': 'parts lie apart',
  'making.rack': 'sheets in the rack', 'making.rack.material': 'foam', 'making.rack.hardness.value': 'hardness', 'making.rack.hardness.scale': 'scale', 'making.rack.price': 'price of 1 m²',
  'making.mould.part': 'mould for', 'making.mould.split': 'mould in two halves', 'making.mould.rim': 'width of the rim', 'making.mould.floor': 'least floor and lid',
  'making.mould.material': 'cast of', 'making.mould.density': 'density of the cast part', 'making.mould.by': 'the mould is', 'making.mould.closing': 'held together by', 'making.mould.bolt': 'bolt holes', 'making.mould.ledge': 'ledge for clamps',
  'making.mould.shrink.length': 'shrink along', 'making.mould.shrink.width': 'shrink across', 'making.mould.shrink.height': 'shrink upwards',
  'making.block.length': 'block length', 'making.block.width': 'block width', 'making.block.sheet': 'thickness of one sheet', 'making.block.sheets': 'sheets glued up', 'making.block.faces': 'cut in the block',
  'making.block.margin': 'foam left round it', 'making.block.tabWidth': 'tab width', 'making.block.tabHeight': 'tab height', 'making.block.scallop': 'ridges left, at most',
  'making.print.part': 'what is printed', 'making.print.split': 'in two parts', 'making.print.pin': 'pin diameter', 'making.print.clearance': 'gap round pins and key',
  'making.jig.ribsApart': 'ribs apart, at most', 'making.jig.face': 'rails carry', 'making.jig.room': 'room beside the sole', 'making.jig.depth': 'upper hangs down', 'making.jig.bush.diameter': 'guide bush, outside', 'making.jig.bush.cutter': 'cutter in the guide bush',
  'making.gauges.depth': 'depth of a gauge', 'making.stack.glueLine': 'one line of glue', 'making.stack.trim': 'left for grinding',
  'making.stack.layerSaves': 'a layer more saves', 'making.stack.apart': 'layers lie apart', 'making.stack.heel': 'sheet under the heel', 'making.stack.forepart': 'sheet ahead of the ball',
  'making.plies.rollWidth': 'width of the roll', 'making.plies.stagger': 'edges keep apart by', 'making.plies.spare': 'spare resin', 'making.plies.hardener': 'hardener to 100 g of resin',
  'making.templates.paper': 'paper', 'making.templates.overlap': 'glued overlap', 'making.wedges.step': 'apex moves by', 'making.wedges.flat': 'standing flat', 'making.card.way': 'way of making',
};

/** What one row of a list is called. */
export const ROW_WORDS: Readonly<Record<string, string>> = { 'making.rack': 'sheet', 'last.heights': 'place', 'order.stiffener.plies': 'ply' };
