/** Takes and other entries of the log, and how their frames are counted. Below every rule that looks at them. */
export * from './log-entry';
export * from './timecode';
