/** What a log of filming is made of: its entries and the timecode they carry. */
export * from './log-entry';
export * from './timecode';
export { writeCues } from './cue';
