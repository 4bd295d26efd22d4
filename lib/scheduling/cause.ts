/** Why an activity was left out. */
export const CAUSE_NONE = 0;
/** Something it needs first has no place. `causeAt`: the arc. */
export const CAUSE_WAITS = 1;
/** No free place before the horizon or its latest end. */
export const CAUSE_NO_PLACE = 2;
/** Its maximum lag cannot be kept. `causeAt`: the arc. */
export const CAUSE_WINDOW = 3;
/** Its hold cannot be kept. `causeAt`: the hold. */
export const CAUSE_HOLD = 4;
