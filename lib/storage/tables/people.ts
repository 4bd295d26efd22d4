import type { Person } from '@/lib/build';
import type { PersonModel } from '../generated/models';
import { readJson } from '../column';
import { plainTable } from '../table';
import { consentShape } from './hazard-values';
import { dateSpans, texts, weeklyHours } from './values';

export const people = plainTable<Person, PersonModel>({
  kind: 'person',
  model: (db) => db.person,
  toRow: ({ skills, hours, away, consent }, common) => ({
    ...common,
    skillsJson: JSON.stringify(skills),
    hoursJson: JSON.stringify(hours),
    awayJson: JSON.stringify(away),
    consentJson: consent === undefined ? null : JSON.stringify(consent),
  }),
  fromRow: ({ id, revision, position, name, skillsJson, hoursJson, awayJson, consentJson }) => {
    const cell = (column: string) => ({ table: 'Person', row: id, column });
    return {
      kind: 'person',
      id,
      revision,
      order: position,
      name,
      skills: readJson(texts, skillsJson, cell('skillsJson')),
      hours: readJson(weeklyHours, hoursJson, cell('hoursJson')),
      away: readJson(dateSpans, awayJson, cell('awayJson')),
      ...(consentJson === null ? {} : { consent: readJson(consentShape, consentJson, cell('consentJson')) }),
    };
  },
});
