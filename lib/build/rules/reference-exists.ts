import { issue } from '@/lib/result';
import { findRecord, kindLabel, listRecords } from '../records';
import { referencesOf } from '../references';
import { quoteName, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Every record that another one names is there. */
export const checkReferences: Rule = (document) =>
  listRecords(document).flatMap((record) =>
    referencesOf(record)
      .filter(({ kind, id }) => findRecord(document, kind, id) === undefined)
      .map(({ kind, id, path, role }) => {
        const label = kindLabel(kind);
        const what = role === label ? '' : ` as its ${role}`;
        const message = id.trim() === '' ? `${startWith(record)} names no ${label}${what}.` : `${startWith(record)} names a ${label}${what} that is not in the series: ${quoteName(id)}.`;
        return issue('reference-missing', message, `Choose another ${label}.`, {
          path, subjects: [...subjectsOf(record), { kind, id, name: '' }],
        });
      }),
  );
