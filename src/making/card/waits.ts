/** A time that must pass before the next step, and where it comes from. */
export interface Wait {
  readonly what: 'dry' | 'press' | 'cure' | 'rest' | 'print';
  /** As it is said on the card; where sources disagree the longer, with the other in the basis. */
  readonly time: string;
  readonly basis: string;
  /** Nights it takes at least. */
  readonly nights: 0 | 1;
}

const PRACTICE = 'common practice';
const SHEET_FIRST = "the maker's data sheet comes first";
/** The sources disagree on the cement: SSIA bonding class notes against a maker's advice on contact cement. */
const CEMENT = `bonding class notes of the shoe trade (SSIA); another source says 10 to 15 min, so the longer; ${SHEET_FIRST}`;

export const WAITS = {
  primer: { what: 'dry', time: 'as long as its data sheet says', basis: "the primer maker's data sheet", nights: 0 },
  cement: { what: 'dry', time: '30 to 45 min on both faces, no heat to speed it up', basis: CEMENT, nights: 0 },
  joint: { what: 'press', time: 'overnight before it is sanded or ground; never less than 45 min', basis: 'bonding class notes of the shoe trade (SSIA): grinding warms a young joint and opens it', nights: 1 },
  laminate: { what: 'cure', time: '24 h at room temperature', basis: `a boat builder's notes of 1999: about 70 % of the strength after 24 h, and it rises for weeks; ${SHEET_FIRST}`, nights: 1 },
  postCure: { what: 'cure', time: '4 to 8 h at 50 to 60 °C, then cold', basis: `${PRACTICE}; ${SHEET_FIRST}`, nights: 0 },
  block: { what: 'press', time: 'overnight before it is cut', basis: 'bonding class notes of the shoe trade (SSIA), as for any joint that a tool warms', nights: 1 },
  seal: { what: 'dry', time: 'overnight after the last coat', basis: `${PRACTICE}; ${SHEET_FIRST}`, nights: 1 },
  demould: { what: 'cure', time: '30 to 90 min at 22 °C before it leaves the mould: the longer', basis: `${PRACTICE}; ${SHEET_FIRST}`, nights: 0 },
  pressed: { what: 'press', time: 'until foam and mould are cold, as its maker says', basis: `${PRACTICE}; ${SHEET_FIRST}`, nights: 0 },
  fullCure: { what: 'cure', time: '24 h to 7 days before it is worked: at least 24 h', basis: `${PRACTICE}; 24 h in one worked example; ${SHEET_FIRST}`, nights: 1 },
  print: { what: 'print', time: 'as the slicer says: ______ h', basis: "the slicer's own estimate", nights: 1 },
  profile: { what: 'rest', time: '2 h before the next grinding or the walk', basis: PRACTICE, nights: 0 },
  outsole: { what: 'press', time: 'overnight, last in', basis: PRACTICE, nights: 1 },
  wear: { what: 'rest', time: '24 h before they are worn', basis: PRACTICE, nights: 1 },
} as const satisfies Record<string, Wait>;
