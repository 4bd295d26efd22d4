/** All checks that can be computed, by number, and those that wait for facts kept elsewhere. */
import { adjacentLook } from './adjacent-look';
import { airingOrder } from './airing-order';
import { beforeShot } from './before-shot';
import { cardCopies } from './card-copies';
import type { Check } from './check';
import { clockOffset } from './clock-offset';
import { coverage } from './coverage';
import { cureWait } from './cure-wait';
import { daylight } from './daylight';
import { departureStatement } from './departure-statement';
import { doubleBooked } from './double-booked';
import { dustInAir } from './dust-in-air';
import { enoughHands } from './enough-hands';
import { noise } from './noise';
import { observedState } from './observed-state';
import { oneWayCamera } from './one-way-camera';
import { orderAcyclic } from './order-acyclic';
import { outsideReturn } from './outside-return';
import { partAway } from './part-away';
import { pickupState } from './pickup-state';
import { placeFull } from './place-full';
import { potLife } from './pot-life';
import { preState } from './pre-state';
import { promiseDue } from './promise-due';
import { recoatWindow } from './recoat-window';
import { redoInvalidates } from './redo-invalidates';
import { reenactmentLabel } from './reenactment-label';
import { releaseLead } from './release-lead';
import { shotState } from './shot-state';
import { takeTimecode } from './take-timecode';
import { timeLapse } from './time-lapse';

export const CHECKS: readonly Check[] = [
  beforeShot, shotState, partAway, preState, cureWait, recoatWindow, potLife,
  dustInAir, doubleBooked, placeFull, noise, daylight, enoughHands, airingOrder,
  adjacentLook, pickupState, reenactmentLabel, promiseDue, departureStatement, releaseLead, cardCopies,
  takeTimecode, clockOffset, observedState, coverage, timeLapse, outsideReturn, orderAcyclic,
  redoInvalidates, oneWayCamera,
];

/** A check whose facts are not part of this program's log, with where they belong. */
export interface OpenCheck {
  readonly number: number;
  readonly title: string;
  readonly waitsFor: string;
}

export const OPEN_CHECKS: readonly OpenCheck[] = [
  { number: 9, title: 'Dew margin and humidity hold through the wet stage', waitsFor: 'humidity readings of the workshop' },
  { number: 15, title: 'A caution comes before or at the first exposure', waitsFor: 'cautions with their place in the footage' },
  { number: 16, title: 'Captions stay long enough to be read', waitsFor: 'captions with their times' },
  { number: 23, title: 'Every sponsor is disclosed', waitsFor: 'sponsors' },
  { number: 24, title: 'No competing sponsors in one episode', waitsFor: 'sponsors' },
  { number: 25, title: 'No sponsor date before a release that can be met', waitsFor: 'sponsors' },
  { number: 27, title: 'Nothing runs out before it is used', waitsFor: 'expiry dates of materials and permissions' },
  { number: 28, title: 'Enough episodes are banked', waitsFor: 'the bank of finished episodes' },
  { number: 29, title: 'Cards and batteries last through the session', waitsFor: 'card space and bit rates' },
  { number: 33, title: 'Everybody in picture has agreed to it', waitsFor: 'consents of people' },
];
