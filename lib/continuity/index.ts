export * from './timecode';
