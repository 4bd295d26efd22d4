/** Paint, solvents, dust from them, and acids. */
import { APRON, CHEMICAL_GLOVES, DUST_MASK, EYES, FACE, SPLASH_CLOTHES, VAPOUR_MASK, type HazardDraft } from './draft';

export const paintAndSolvent: readonly HazardDraft[] = [
  {
    id: 'solvent-spray', name: 'Solvent paint sprayed', severity: 'II', trigger: [['spraying', 'solvent']],
    controls: [
      ['E', 'Brush it, or send it out'], ['S', 'Waterborne paint'],
      ['N', 'Extraction running before the lid comes off and until the air is clear', 'shown'],
      ['A', 'Bystanders and camera crew outside the spraying area'],
    ],
    equipment: [VAPOUR_MASK, CHEMICAL_GLOVES, EYES, SPLASH_CLOTHES], signs: ['W021', 'W071', 'M057', 'M017'],
    caution: { screen: 'Spray mist: vapour and particle filter, fan on, others out.', spoken: 'Carbon alone is not enough: mist needs a particle filter too, and the fan and your eyes need the same care. Read the data sheet, not the pack count.' },
    show: 'Filter label, fan on, fit check',
    deferral: { text: 'the room is confined, or there is no extraction', when: [['spraying', 'confined'], ['spraying', 'no-extraction']] },
    sources: [['read', 'Xylene: OSHA PEL 100 ppm (435 mg/m3), IDLH 900 ppm'], ['memory', 'Xylene: UK WEL 50 ppm over 8 h, 100 ppm over 15 min']],
  },
  {
    id: 'spray-ignition', name: 'Vapour or mist catching fire', severity: 'I', trigger: [['spraying', 'solvent'], ['solvent-wiping'], ['solvent', 'heater-or-flame']],
    controls: [
      ['E', 'Take every ignition source away: heater unplugged and cold before the lid comes off', 'shown'],
      ['N', 'Rated booth and fan'], ['A', 'No switching, no phones on charge, no hot work within 20 ft'],
    ],
    equipment: [{ text: 'Anti-static clothing', sign: 'M010', standard: '', standardStatus: 'practice' }], signs: ['P003', 'P039', 'W021', 'F001'],
    caution: { screen: 'Vapour finds a flame. Heater off, unplugged, cold, first.', spoken: 'The heater warmed the room, and now it is off, unplugged and cold before any lid comes off. Vapour runs along the floor to a flame.' },
    show: 'The heater unplugged',
    deferral: { text: 'any indoor spraying without a booth, where local codes forbid it', when: [['spraying', 'solvent', 'indoors']] },
    sources: [['read', '29 CFR 1910.107(c)(2): 20 ft from ignition sources'], ['read', '29 CFR 1910.107(c)(3): no space heaters in a spraying area']],
  },
  {
    id: 'lead-paint', name: 'Lead or chromate in old paint', severity: 'II', trigger: [['disturbs-old-paint'], ['lead-or-chromate']],
    controls: [
      ['E', 'Leave it, or cover it'], ['S', 'Wet methods instead of dry sanding'], ['N', 'HEPA vacuum on the tool', 'shown'],
      ['A', 'Test kit first; wash before food; no food in the room; no torch', 'shown'],
    ],
    equipment: [DUST_MASK], signs: ['M011', 'P022', 'M017'],
    caution: { screen: 'Test old paint for lead. Wet it; no torch, no dry sanding.', spoken: 'Old paint gets tested before it gets touched. Where there is lead we work wet, wear a P three filter, and wash before tea.' },
    show: 'The test; no torch or dry sanding',
    deferral: { text: 'children live or play there, or it is a home', when: [['disturbs-old-paint', 'children-near'], ['lead-or-chromate', 'children-near']] },
    sources: [['read', 'Lead: OSHA PEL 50, action level 30 micrograms/m3']],
  },
  {
    id: 'degreaser', name: 'Degreaser, thinner or paint stripper', severity: 'II', trigger: [['solvent-wiping'], ['chlorinated']],
    controls: [
      ['E', 'Hot wash instead'], ['S', 'Cleaner without chlorine: the label is read aloud', 'shown'], ['N', 'Doors open, fan on', 'shown'],
      ['A', 'Never before heat or welding; rags out of the building'],
    ],
    equipment: [CHEMICAL_GLOVES, EYES], signs: ['W016', 'W021', 'M009'],
    caution: { screen: 'Read the label. Chlorinated cleaner plus heat makes poison.', spoken: 'I read the label aloud, because chlorinated cleaner near heat or a welding arc makes phosgene. This one has none, and the door is open.' },
    show: 'The label, read aloud',
    deferral: { text: 'it is vapour degreasing', when: [['vapour-degreasing']] },
    sources: [['read', 'Chlorinated solvent with ultraviolet light or heat gives phosgene'], ['read', 'Dichloromethane: 40 CFR 751']],
  },
  {
    id: 'rags', name: 'Oily rags heating themselves', severity: 'II', trigger: [['drying-oil']],
    controls: [['S', 'An oil that does not dry by oxygen'], ['N', 'Metal can with a lid, or rags under water', 'shown'], ['A', 'Out of the building every day']],
    equipment: [], signs: ['F001'],
    caution: { screen: 'Oily rags light themselves. Lidded can, every time.', spoken: 'These rags can start a fire on their own tonight. They go in the lidded can, and the can goes outside.' },
    show: 'The can',
    sources: [['read', '29 CFR 1910.107(g): waste in metal cans, daily']],
  },
  {
    id: 'acid', name: 'Acid dip or electrolysis', severity: 'II', trigger: [['acid-or-electrolysis'], ['hydrofluoric']],
    controls: [['S', 'A chelating rust remover'], ['N', 'Outdoors or ventilated: it gives off gas', 'shown'], ['A', 'Acid into water, never the other way; anode of plain steel, never stainless']],
    equipment: [CHEMICAL_GLOVES, FACE, APRON], signs: ['W023', 'E011'],
    caution: { screen: 'Acid into water, never water into acid.', spoken: 'Acid goes into water, slowly, outdoors. Plain steel for the anode, never stainless: that makes chromate.' },
    show: 'Which metal the anode is',
    deferral: { text: 'it holds hydrofluoric acid', when: [['hydrofluoric']] },
    sources: [['practice', 'Workshop practice']],
  },
  {
    id: 'combustible-dust', name: 'Dust that can explode', severity: 'I', trigger: [['dust-sanding', 'light-metal-dust'], ['light-metal-dust'], ['dust-sanding', 'indoors']],
    controls: [['S', 'Wet sanding'], ['N', 'Earthed extraction at the tool', 'shown'], ['A', 'No blowing down; swept up or vacuumed the same day']],
    equipment: [DUST_MASK], signs: ['P003'],
    caution: { screen: 'Fine dust burns. Extract it, never blow it down.', spoken: 'Dust on a beam is fuel waiting for a spark. We extract it at the tool and never blow it down.' },
    show: 'The extraction hose on the tool',
    deferral: { text: 'a collector takes aluminium or magnesium dust', when: [['light-metal-dust']] },
    sources: [['read', 'NFPA 654: 1/32 in of dust over 5 % of the floor']],
  },
  {
    id: 'breathing-dust', name: 'Wood, filler or paint dust breathed in', severity: 'II', trigger: [['dust-sanding']],
    controls: [['S', 'Wet sanding or a scraper'], ['N', 'Extraction on the tool', 'shown'], ['A', 'Before the day\'s paint, never after it; others out of the air']],
    equipment: [DUST_MASK, EYES], signs: ['M017'],
    caution: { screen: 'Sanding dust stays in the lungs. Hose on, mask on.', spoken: 'The hose takes most of it and the mask takes the rest. The dust you cannot see is the dust that stays in you.' },
    show: 'Hose on the sander, mask on',
    sources: [['practice', 'Workshop practice']],
  },
];
