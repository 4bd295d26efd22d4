/** Fields that more than one form asks for. */
import type { Choice, ListSpec, TextSpec } from './record-form-model';

export function nameField(help: string): TextSpec {
  return { type: 'text', name: 'name', label: 'Name', help };
}

/** Choices whose label is the value itself, unless `labels` says otherwise. */
export function options(values: readonly string[], labels: Readonly<Record<string, string>> = {}): readonly Choice[] {
  return values.map((value) => ({ value, label: labels[value] ?? value }));
}

export const WEEKDAYS: readonly Choice[] = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'].map(
  (label, index) => ({ value: String(index + 1), label }),
);

export function weeklyHours(name: string, label: string, help: string): ListSpec {
  return {
    type: 'list', name, label, help, item: 'hours', isOptional: true, whenNone: 'No hours yet.',
    fields: [
      { type: 'choice', codec: 'number', name: 'weekday', label: 'Weekday', options: WEEKDAYS },
      { type: 'time', name: 'from', label: 'From' },
      { type: 'time', name: 'to', label: 'To' },
    ],
  };
}

export function dateSpans(name: string, label: string, help: string): ListSpec {
  return {
    type: 'list', name, label, help, item: 'dates', isOptional: true, whenNone: 'None.',
    fields: [
      { type: 'date', name: 'from', label: 'First day' },
      { type: 'date', name: 'to', label: 'Last day' },
      { type: 'text', name: 'why', label: 'Why', isOptional: true },
    ],
  };
}
