/** The rooms of a series, in the order of a crew's day: at the bench, on the build, for the series, in the books. */
import {
  CalendarRange, Clapperboard, Disc3, Hammer, Hourglass, LineChart, NotebookPen, Route, ShieldAlert, Thermometer, Undo2, Waypoints, type LucideIcon,
} from 'lucide-react';
import {
  buildPath, climatePath, episodesPath, historyPath, logPath, nowPath, plansPath, progressPath, recordsPath, safetyPath, seriesPath, waitsPath, weekPath,
} from './paths';

export interface Room {
  readonly name: string;
  readonly href: string;
  /** Pages that begin with this are in the room. */
  readonly under: string;
  readonly icon: LucideIcon;
  /** Wanted with the phone in one hand: it lies at the foot of a narrow screen. */
  readonly isAtHand: boolean;
}

export interface RoomGroup {
  readonly name: string;
  readonly rooms: readonly Room[];
}

const room = (name: string, href: string, icon: LucideIcon, { under = href, isAtHand = false }: { under?: string; isAtHand?: boolean } = {}): Room =>
  ({ name, href, under, icon, isAtHand });

/** `week` is the current ISO week. */
export function listRooms(seriesId: string, week: string): readonly RoomGroup[] {
  return [
    {
      name: 'At the bench',
      rooms: [
        room('Now', nowPath(seriesId), Hammer, { isAtHand: true }),
        room('Week', weekPath(seriesId, week), CalendarRange, { under: `${seriesPath(seriesId)}/week`, isAtHand: true }),
        room('Log', logPath(seriesId), Clapperboard, { isAtHand: true }),
      ],
    },
    {
      name: 'The build',
      rooms: [room('Build', buildPath(seriesId), Waypoints), room('Waits', waitsPath(seriesId), Hourglass), room('Climate', climatePath(seriesId), Thermometer)],
    },
    {
      name: 'The series',
      rooms: [
        room('Episodes', episodesPath(seriesId), Disc3), room('Safety', safetyPath(seriesId), ShieldAlert, { isAtHand: true }),
        room('Progress', progressPath(seriesId), LineChart),
      ],
    },
    {
      name: 'The books',
      rooms: [room('Plans', plansPath(seriesId), Route), room('Records', recordsPath(seriesId), NotebookPen), room('History', historyPath(seriesId), Undo2)],
    },
  ];
}

export const isInRoom = ({ under }: Room, path: string): boolean => path === under || path.startsWith(`${under}/`);
