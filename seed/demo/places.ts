/** The railway arch, place by place, and what stands in it. */

export const places = [
  { id: 'place-main-bay', name: 'Main bay', capacity: 2, airZone: 'arch' },
  { id: 'place-bench', name: 'Long bench', capacity: 2, airZone: 'arch' },
  { id: 'place-blast-corner', name: 'Blast cabinet corner', capacity: 1, airZone: 'arch' },
  { id: 'place-filming-corner', name: 'Filming corner', capacity: 1, airZone: 'arch' },
  { id: 'place-paint-tent', name: 'Paint tent', capacity: 1, airZone: 'paint tent' },
  { id: 'place-engine-room', name: 'Engine room (old lamp store)', capacity: 1, airZone: 'engine room' },
  { id: 'place-yard', name: 'Yard', capacity: 1, airZone: 'open air' },
] as const;

export const equipment = [
  { id: 'equip-lift', name: 'Motorcycle lift bench', count: 1 },
  { id: 'equip-hoist', name: 'Chain hoist on the roof beam', count: 1 },
  { id: 'equip-jack', name: 'Trolley jack with axle stands', count: 1 },
  { id: 'equip-compressor', name: 'Compressor with regulator and dryer', count: 1 },
  { id: 'equip-blast-cabinet', name: 'Blast cabinet with extractor', count: 1 },
  { id: 'equip-washer', name: 'Parts washer, water-based', count: 1 },
  { id: 'equip-welder', name: 'Wire-feed welder with fume extraction', count: 1 },
  { id: 'equip-grinder', name: 'Angle grinder, guarded', count: 2 },
  { id: 'equip-pillar-drill', name: 'Pillar drill', count: 1 },
  { id: 'equip-press', name: 'Bench press, 10 t', count: 1 },
  { id: 'equip-engine-stand', name: 'Engine stand', count: 1 },
  { id: 'equip-measuring', name: 'Micrometers, bore gauge and straight edge', count: 1 },
  { id: 'equip-torque', name: 'Torque wrench', count: 2 },
  { id: 'equip-heat-gun', name: 'Heat gun', count: 1 },
  { id: 'equip-tent-fan', name: 'Tent extraction fan, rated for vapour', count: 1 },
  { id: 'equip-spray-gun', name: 'Spray gun, high volume low pressure', count: 1 },
  { id: 'equip-polisher', name: 'Bench polisher', count: 1 },
  { id: 'equip-solder', name: 'Crimping and soldering kit', count: 1 },
  { id: 'equip-meter', name: 'Multimeter', count: 1 },
  { id: 'equip-alignment', name: 'Alignment bars and plumb lines', count: 1 },
] as const;
