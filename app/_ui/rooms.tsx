'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import {
  CalendarRange, Clapperboard, Disc3, Hammer, Hourglass, LineChart, NotebookPen, Route, ShieldAlert, Thermometer, Undo2, Waypoints, type LucideIcon,
} from 'lucide-react';
import {
  buildPath, climatePath, episodesPath, historyPath, logPath, nowPath, plansPath, progressPath, recordsPath, safetyPath, seriesPath, waitsPath, weekPath,
} from './paths';
import styles from './shell.module.css';

interface Room {
  readonly name: string;
  readonly href: string;
  /** Pages that begin with this are in the room. */
  readonly under: string;
  readonly icon: LucideIcon;
}

function listRooms(seriesId: string, week: string): readonly Room[] {
  return [
    { name: 'Now', href: nowPath(seriesId), under: nowPath(seriesId), icon: Hammer },
    { name: 'Week', href: weekPath(seriesId, week), under: `${seriesPath(seriesId)}/week`, icon: CalendarRange },
    { name: 'Build', href: buildPath(seriesId), under: buildPath(seriesId), icon: Waypoints },
    { name: 'Log', href: logPath(seriesId), under: logPath(seriesId), icon: Clapperboard },
    { name: 'Episodes', href: episodesPath(seriesId), under: episodesPath(seriesId), icon: Disc3 },
    { name: 'Waits', href: waitsPath(seriesId), under: waitsPath(seriesId), icon: Hourglass },
    { name: 'Climate', href: climatePath(seriesId), under: climatePath(seriesId), icon: Thermometer },
    { name: 'Plans', href: plansPath(seriesId), under: plansPath(seriesId), icon: Route },
    { name: 'Safety', href: safetyPath(seriesId), under: safetyPath(seriesId), icon: ShieldAlert },
    { name: 'Progress', href: progressPath(seriesId), under: progressPath(seriesId), icon: LineChart },
    { name: 'Records', href: recordsPath(seriesId), under: recordsPath(seriesId), icon: NotebookPen },
    { name: 'History', href: historyPath(seriesId), under: historyPath(seriesId), icon: Undo2 },
  ];
}

/** The rooms of a series. `week` is the current ISO week. */
export function Rooms({ seriesId, week }: { readonly seriesId: string; readonly week: string }) {
  const path = usePathname();
  return (
    <nav aria-label="Rooms" className={styles.rooms}>
      <ul>
        {listRooms(seriesId, week).map(({ name, href, under, icon: Icon }) => (
          <li key={name}>
            <Link href={href} className={styles.room} aria-current={path === under || path.startsWith(`${under}/`) ? 'page' : undefined}>
              <Icon size={20} aria-hidden />
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
