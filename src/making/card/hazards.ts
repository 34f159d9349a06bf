/** What can hurt at the bench. Common practice of the trade; local codes and the makers' safety sheets hold. */
export const HAZARDS = {
  dust: 'Foam dust: extraction on, dust mask. Foam that smears is too hot; do not breathe its fumes.',
  solvent: 'Cement and primer give off solvent: extraction on, gloves, no flame and no spark.',
  epoxy: 'Epoxy: gloves and sleeves, nothing on the skin. It sensitises for good. Mix no more than is laid while it is liquid.',
  carbon: 'Carbon: its fibres and the dust of half-cured epoxy harm lungs and skin. Mask, gloves, sand wet, vacuum, never sweep or blow.',
  spindle: 'Turning tools: goggles and ear protection; no gloves, loose sleeves, hair or laces near the spindle. Clamp the work first; let it stop before you reach in.',
  casting: 'Casting resin: gloves, goggles, extraction; keep water away from it and follow its safety sheet.',
  hot: 'Nozzle and bed are hot; let the fumes of the printer out of the room.',
  heat: 'No hot air on the carbon before its post-cure is done: epoxy softens at about 70 °C, half-cured sooner, and sags. Leave the last in.',
  walking: 'Danger of falling: only beside a rail, with somebody at hand, on a level floor.',
} as const;
export type Hazard = keyof typeof HAZARDS;
