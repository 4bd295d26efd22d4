/** The part of smpte-timecode that is used; the package brings no types for it. */
declare module 'smpte-timecode' {
  export default class Timecode {
    constructor(frame: number, rate: number, isDropFrame: boolean);
    toString(): string;
  }
}
