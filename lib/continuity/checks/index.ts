/** All forty checks, by number. */
import { adjacentLook } from './adjacent-look';
import { airingOrder } from './airing-order';
import { bankLow } from './bank-low';
import { beforeShot } from './before-shot';
import { cameraKit } from './camera-kit';
import { captionSpeed } from './caption-speed';
import { cardCopies } from './card-copies';
import { cautionTime } from './caution-time';
import type { Check } from './check';
import { clockOffset } from './clock-offset';
import { consent } from './consent';
import { coverage } from './coverage';
import { cureWait } from './cure-wait';
import { daylight } from './daylight';
import { departureStatement } from './departure-statement';
import { doubleBooked } from './double-booked';
import { dustInAir } from './dust-in-air';
import { enoughHands } from './enough-hands';
import { expiry } from './expiry';
import { humidAir } from './humid-air';
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
import { sponsorDate } from './sponsor-date';
import { sponsorDisclosure } from './sponsor-disclosure';
import { sponsorRivals } from './sponsor-rivals';
import { takeTimecode } from './take-timecode';
import { timeLapse } from './time-lapse';

export const CHECKS: readonly Check[] = [
  beforeShot, shotState, partAway, preState, cureWait, recoatWindow, potLife, dustInAir, humidAir, doubleBooked,
  placeFull, noise, daylight, enoughHands, cautionTime, captionSpeed, airingOrder, adjacentLook, pickupState, reenactmentLabel,
  promiseDue, departureStatement, sponsorDisclosure, sponsorRivals, sponsorDate, releaseLead, expiry, bankLow, cameraKit, cardCopies,
  takeTimecode, clockOffset, consent, observedState, coverage, timeLapse, outsideReturn, orderAcyclic, redoInvalidates, oneWayCamera,
];
