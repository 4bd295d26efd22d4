/** Three people: the maker and two helpers with different skills and evenings. */
import type { PersonDraft } from './draft';

export const people: readonly PersonDraft[] = [
  {
    id: 'person-marta',
    name: 'Marta',
    skills: ['mechanics', 'engine', 'paint', 'presenting'],
    hours: [[1, '08:00', '11:30'], [3, '13:00', '17:00'], [5, '08:00', '12:30']],
    consent: { day: -20, where: 'paper in the blue folder' },
    away: [{ fromDay: 46, toDay: 48, why: 'family weekend' }],
  },
  {
    id: 'person-dilip',
    name: 'Dilip',
    skills: ['electrics', 'camera', 'mechanics', 'presenting'],
    hours: [[3, '13:00', '17:30'], [5, '08:30', '12:00']],
    consent: { day: -20, where: 'paper in the blue folder, no home address' },
    away: [
      { fromDay: 25, toDay: 27, why: 'moving house' },
      { fromDay: 70, toDay: 76, why: 'night shifts' },
    ],
  },
  {
    id: 'person-joan',
    name: 'Joan',
    skills: ['welding', 'woodwork', 'paint', 'mechanics'],
    hours: [[1, '08:30', '16:00'], [2, '08:30', '16:00'], [3, '08:30', '16:00'], [4, '08:30', '16:00'], [5, '08:30', '15:00']],
    consent: { day: -18, where: 'paper in the blue folder' },
    away: [{ fromDay: 56, toDay: 62, why: 'week by the sea' }],
  },
];
