/** The railway arch, place by place, and what stands in it. */

import { NO_ROOM_AIR, NO_TOOL_EXPOSURE, type RoomAir, type ToolExposure } from '@/lib/build';

const paced = 'paced out; air changes guessed from the leaks: measure before you rely on it';
const arch: RoomAir = { volume: 260, airChanges: 1, source: paced };
const guess = 'our guess, no source: take the handbook of your own tool, or measure';
const tool = (noise: number | null, vibration: number | null): ToolExposure => ({ noise, vibration, source: guess });

export const places = [
  { id: 'place-main-bay', name: 'Main bay', capacity: 2, airZone: 'arch', air: arch },
  { id: 'place-bench', name: 'Long bench', capacity: 2, airZone: 'arch', air: arch },
  { id: 'place-blast-corner', name: 'Blast cabinet corner', capacity: 1, airZone: 'arch', air: arch },
  { id: 'place-filming-corner', name: 'Filming corner', capacity: 1, airZone: 'arch', air: arch },
  { id: 'place-paint-tent', name: 'Paint tent', capacity: 1, airZone: 'paint tent', air: { volume: 22, airChanges: 30, source: 'tent 3 x 3 x 2.4 m; fan plate divided by two for hose and filter' } },
  { id: 'place-engine-room', name: 'Engine room (old lamp store)', capacity: 1, airZone: 'engine room', air: { volume: 40, airChanges: 1, source: paced } },
  { id: 'place-yard', name: 'Yard', capacity: 1, airZone: 'open air', air: NO_ROOM_AIR },
] as const;

export const equipment = [
  { id: 'equip-lift', name: 'Motorcycle lift bench', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-hoist', name: 'Chain hoist on the roof beam', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-jack', name: 'Trolley jack with axle stands', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-compressor', name: 'Compressor with regulator and dryer', count: 1, exposure: tool(88, null) },
  { id: 'equip-blast-cabinet', name: 'Blast cabinet with extractor', count: 1, exposure: tool(90, null) },
  { id: 'equip-washer', name: 'Parts washer, water-based', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-welder', name: 'Wire-feed welder with fume extraction', count: 1, exposure: tool(83, null) },
  { id: 'equip-grinder', name: 'Angle grinder, guarded', count: 2, exposure: tool(98, 6) },
  { id: 'equip-pillar-drill', name: 'Pillar drill', count: 1, exposure: tool(80, null) },
  { id: 'equip-press', name: 'Bench press, 10 t', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-engine-stand', name: 'Engine stand', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-measuring', name: 'Micrometers, bore gauge and straight edge', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-torque', name: 'Torque wrench', count: 2, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-heat-gun', name: 'Heat gun', count: 1, exposure: tool(78, null) },
  { id: 'equip-tent-fan', name: 'Tent extraction fan, rated for vapour', count: 1, exposure: tool(74, null) },
  { id: 'equip-spray-gun', name: 'Spray gun, high volume low pressure', count: 1, exposure: tool(82, null) },
  { id: 'equip-polisher', name: 'Bench polisher', count: 1, exposure: tool(85, null) },
  { id: 'equip-solder', name: 'Crimping and soldering kit', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-meter', name: 'Multimeter', count: 1, exposure: NO_TOOL_EXPOSURE },
  { id: 'equip-alignment', name: 'Alignment bars and plumb lines', count: 1, exposure: NO_TOOL_EXPOSURE },
] as const;
