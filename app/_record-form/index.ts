/** The form of any record, and the one that makes something new of other kinds. */
export { PlainForm } from './plain-form';
export { RecordForm } from './record-form';
