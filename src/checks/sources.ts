/** Where limits and cautions come from, as a finding names them. */
export const PRACTICE = 'common practice';
export const PAIR = 'common practice, a pair level within 1 mm';
export const GAIT = 'computed from Pinzone and others 2014 and from open example gait data';
export const TRIPPING = 'common practice; least toe clearance of walkers 11 to 13 mm (Winter 1991; Schulz 2011, J Biomech 44:1277), about 0.9 mm of it for each mm at the toe (Nagano 2015, Gait Posture 42:214)';
export const STANDING = 'common practice; hip 62 ± 13 mm ahead of the ankle in quiet standing (Woodhull 1985, Eur J Appl Physiol 54:109)';
export const TAPE = 'J Rheumatol 2014;41:1689';
export const HEEL_RISE = 'common practice; a change of 6 mm can have a profound effect (Rheinstein 2014)';
export const PUBLISHED_ROCKERS = 'Preece 2017, Chapman 2013, Ghomian 2019';
export const BALANCE = 'Albright and Woodhull-Smith 2009, Gait Posture (worse when pushed); Ghomian 2016, Prosthet Orthot Int 40:224 (no difference)';
export const FEELING = 'Preece 2017; IWGDF guidelines 2023';
export const RAMP = 'ADA Standards for Accessible Design 2010, 403.3: walking surfaces no steeper than 1 in 20 (from memory)';
