import { describe, expect, it } from 'vitest';
import { instantOf } from '@/lib/calendar';
import { explainBlock, scheduleOf } from '@/lib/plan';
import { MS_PER_MINUTE } from '@/lib/units';
import { DEMO_ZONE, demoSeries } from '@/seed/demo';
import { blockOf, planOf } from './plan-of';

const now = instantOf('2027-02-01', '09:00', DEMO_ZONE);
const { compiled, plan } = planOf(demoSeries('2027-02-01'), now, { schedules: 20 });
const schedule = scheduleOf(compiled, plan);
const afterCoat = plan.blocks.find((block) => block.kind === 'task' && block.because[0]?.text.startsWith('Waits for '))!;
const crowded = plan.blocks.find((block) => block.kind === 'task' && block.because[0]?.text.includes('busy with'))!;

describe('what would free a block', () => {
  it('tells the chain back from the block, each step with its moment', () => {
    const { chain } = explainBlock(compiled, schedule, afterCoat.id);
    expect(chain[0]).toMatchObject({ blockId: afterCoat.id, start: afterCoat.start });
    expect(chain.length).toBeGreaterThan(1);
    expect(chain.slice(0, -1).every(({ text }) => text !== null)).toBe(true);
    for (const [k, step] of chain.slice(1).entries()) expect(step.start).toBeLessThan(chain[k]!.start + 1);
  });

  it('offers only changes that were tried, with the gain that came of them', () => {
    const all = [afterCoat, crowded].flatMap((block) => explainBlock(compiled, schedule, block.id).reliefs.map((relief) => ({ relief, block })));
    expect(all.length).toBeGreaterThan(0);
    for (const { block, relief } of all) {
      expect(relief.gained).toBeGreaterThanOrEqual(15);
      expect(relief.start).toBe(blockOf(plan, block.id).start - relief.gained * MS_PER_MINUTE);
      expect(relief.text).toContain('frees it');
    }
  });

  it('has nothing to say about what is no work of the plan', () => {
    expect(explainBlock(compiled, schedule, 'task:gone')).toEqual({ chain: [], reliefs: [] });
  });
});
