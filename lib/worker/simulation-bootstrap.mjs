// Starts a simulation thread outside the bundle (terminal, tests): loads TypeScript, then the entry.
import { register } from 'tsx/esm/api';

register();
await import(new URL('./simulation-entry.ts', import.meta.url).href);
