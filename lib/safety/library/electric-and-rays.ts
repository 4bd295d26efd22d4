/** Batteries, mains, light, and what is under charge. */
import { EYES, CUT_GLOVES, type HazardDraft } from './draft';

export const electricAndRays: readonly HazardDraft[] = [
  {
    id: 'lead-acid', name: 'Lead-acid battery on charge', severity: 'II', trigger: [['battery-charging'], ['damaged-battery']],
    controls: [['E', 'Charge outdoors'], ['N', 'Ventilate: hydrogen', 'shown'], ['A', 'Earth lead off first, on last; no rings', 'shown']],
    equipment: [EYES], signs: ['W026', 'W023', 'P003'],
    caution: { screen: 'Charging makes hydrogen. Rings off, no sparks.', spoken: 'Rings off, earth lead off first. A charging battery makes hydrogen, and four per cent in air burns.' },
    show: 'Rings off',
    deferral: { text: 'it is swollen, leaking or frozen', when: [['damaged-battery']] },
    sources: [['read', 'HSE INDG139'], ['read', 'Hydrogen: lower explosive limit 4 %']],
  },
  {
    id: 'high-voltage', name: 'High-voltage battery pack', severity: 'I', trigger: [['high-voltage-open']],
    controls: [['E', 'Leave it closed'], ['N', 'Isolate and lock', 'shown'], ['A', 'Prove it dead with a proved tester; never a fixed wait']],
    equipment: [{ text: 'Insulating gloves', sign: 'M009', standard: '', standardStatus: 'practice' }], signs: ['W012', 'W042', 'M021'],
    caution: { screen: 'High voltage: only somebody qualified opens it.', spoken: 'This stays shut. Somebody qualified isolates it, locks it and proves it dead.' },
    show: 'The lock, the proving unit',
    deferral: { text: 'always: qualified people only', when: 'always' }, needsSecondPerson: true,
    sources: [['read', 'HSE GS38: proving dead']],
  },
  {
    id: 'mains', name: 'Mains electricity', severity: 'I', trigger: [['mains-open']],
    controls: [['E', 'Unplug it', 'shown'], ['N', 'RCD of 30 mA'], ['A', 'Isolate, lock off, prove dead', 'shown']],
    equipment: [], signs: ['W012', 'M006', 'M021'],
    caution: { screen: 'Isolate, lock, prove dead. Then open it.', spoken: 'Plug out and in my pocket. Isolated, locked, proved dead, and only then does the cover come off.' },
    show: 'The lock in frame',
    deferral: { text: 'it is fixed wiring', when: [['fixed-wiring']] }, needsSecondPerson: true,
    sources: [['read', 'HSE: RCD of 30 mA']],
  },
  {
    id: 'laser-uv', name: 'Laser or ultraviolet light', severity: 'I', trigger: [['laser-or-uv']],
    controls: [['E', 'Another method'], ['N', 'Enclosure', 'shown'], ['A', 'Controlled area, no bystanders', 'shown']],
    equipment: [{ text: 'Goggles for that wavelength', sign: 'M007', standard: '', standardStatus: 'practice' }], signs: ['W004', 'W027', 'P080'],
    caution: { screen: 'Even a reflection blinds. Nobody else in the room.', spoken: 'A reflection of this can blind you. Nobody is in the room but the person in these goggles.' },
    show: 'No bystanders',
    deferral: { text: 'always for class 4', when: 'always' },
    sources: [['read', 'Class 4 lasers: diffuse reflections are dangerous']],
  },
  {
    id: 'sealed-system', name: 'Airbag or refrigerant', severity: 'I', trigger: [['sealed-system-open']],
    controls: [['E', 'Leave it closed'], ['A', 'No venting; battery off before an airbag']],
    equipment: [EYES, CUT_GLOVES], signs: ['P069'],
    caution: { screen: 'Airbags and refrigerant: licensed hands only.', spoken: 'We leave this one alone. Airbags and refrigerant are for people with the licence and the tools.' },
    show: 'No venting',
    deferral: { text: 'always: licensed people only', when: 'always' },
    sources: [['read', 'Refrigerant recovery rules']],
  },
];
