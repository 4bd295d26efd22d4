'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { LayoutGrid } from 'lucide-react';
import { isInRoom, listRooms, type Room } from './room-list';
import styles from './rooms.module.css';

interface RoomsProps {
  readonly seriesId: string;
  /** The current ISO week. */
  readonly week: string;
}

const ALL_ROOMS = 'all-rooms';

/** The band stays when the page changes, so what lies over the page has to be put away. */
const putAway = (link: HTMLElement) => link.closest<HTMLElement>('[popover]')?.hidePopover();

function RoomLink({ room, path, onOpen }: { readonly room: Room; readonly path: string; readonly onOpen?: (link: HTMLElement) => void }) {
  const Icon = room.icon;
  return (
    <Link href={room.href} className={styles.room} aria-current={isInRoom(room, path) ? 'page' : undefined} onClick={(event) => onOpen?.(event.currentTarget)}>
      <Icon size={20} aria-hidden />
      {room.name}
    </Link>
  );
}

/** Along the band where there is width for them all; on the phone the four at hand lie at the foot, and the rest a tap further. */
export function Rooms({ seriesId, week }: RoomsProps) {
  const path = usePathname();
  const groups = listRooms(seriesId, week);
  const atHand = groups.flatMap(({ rooms }) => rooms).filter(({ isAtHand }) => isAtHand);
  return (
    <>
      <nav aria-label="Rooms" className={styles.along}>
        {groups.map(({ name, rooms }) => (
          <ul key={name} aria-label={name}>
            {rooms.map((room) => (
              <li key={room.name}>
                <RoomLink room={room} path={path} />
              </li>
            ))}
          </ul>
        ))}
      </nav>
      <nav aria-label="Rooms" className={styles.foot}>
        <ul>
          {atHand.map((room) => (
            <li key={room.name}>
              <RoomLink room={room} path={path} />
            </li>
          ))}
          <li>
            <button type="button" className={styles.room} popoverTarget={ALL_ROOMS} data-in={atHand.some((room) => isInRoom(room, path)) ? undefined : ''}>
              <LayoutGrid size={20} aria-hidden />
              All rooms
            </button>
          </li>
        </ul>
        <div id={ALL_ROOMS} popover="auto" className={styles.sheet}>
          {groups.map(({ name, rooms }) => (
            <section key={name} aria-label={name}>
              <h2>{name}</h2>
              <ul>
                {rooms.map((room) => (
                  <li key={room.name}>
                    <RoomLink room={room} path={path} onOpen={putAway} />
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      </nav>
    </>
  );
}
