/** What has become of an activity in a schedule. */
export const UNDECIDED = 0;
export const PLACED = 1;
export const UNPLACED = 2;
