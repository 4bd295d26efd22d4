export { lowerToCore } from './lower';
export { searchExactly } from './search';
