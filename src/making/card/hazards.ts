/** What can hurt at the bench. Common practice of the trade; local codes and the makers' safety sheets hold. */
export const HAZARDS = {
  dust: 'Foam dust: extraction on, dust mask. Foam that smears is too hot; do not breathe its fumes.',
  board: 'Board dust: that of MDF and modelling board is fine and harms the lungs. Extraction on, fine-dust mask.',
  solvent: 'Cement and primer give off solvent: extraction on, gloves, no flame and no spark.',
  epoxy: 'Epoxy: gloves and sleeves, nothing on the skin. It sensitises for good. Mix no more than is laid while it is liquid.',
  carbon: 'Carbon: its fibres and the dust of half-cured epoxy harm lungs and skin. Mask, sand wet, vacuum, never sweep or blow. Gloves, but not at a turning tool.',
  spindle: 'Turning tools: goggles and ear protection; no gloves, loose sleeves, hair or laces near the spindle. Clamp the work first; let it stop before you reach in.',
  casting: 'Casting: gloves, goggles, extraction. Polyurethane can sensitise the lungs for good; keep water away from it. Its safety sheet comes first.',
  pressing: 'Foam, mould and press are hot, and hot foam gives off fumes: gloves against heat, extraction, no hand in the press.',
  hot: 'Nozzle and bed are hot; let the fumes of the printer out of the room.',
  heat: 'No hot air on the carbon before its post-cure is done: epoxy softens at about 70 °C, half-cured sooner, and sags. Leave the last in.',
  walking: 'Danger of falling: only beside a rail, with somebody at hand, on a level floor.',
} as const;
export type Hazard = keyof typeof HAZARDS;
