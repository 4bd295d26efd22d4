'use client';

import { Plus } from 'lucide-react';
import { Button, CheckField, Field, FieldGroup, SelectField, TextField } from '@/app/_ui';
import fieldStyles from '@/app/_ui/field.module.css';
import type { ChoiceSpec, Draft, LeafSpec, LinesSpec, ManyChoicesSpec, MomentSpec, PartStateSpec, TextSpec, ThreePointSpec } from '@/lib/views';
import { useChoices, useErrors, useForm } from './form-context';
import { fieldId, isDraftList, isDraftObject, type Path } from './form-paths';
import styles from './record-form.module.css';

export interface ControlOf<Spec> {
  readonly field: Spec;
  readonly path: Path;
  readonly value: Draft | undefined;
  /** The item of a list it stands in. */
  readonly row?: Draft | undefined;
}

const textOf = (value: Draft | undefined): string => (typeof value === 'string' ? value : '');

function useWords({ field, path }: { field: LeafSpec; path: Path }) {
  return { id: fieldId(path), label: field.label, help: field.help, isOptional: field.isOptional, errors: useErrors(path) };
}

function TextControl({ field, path, value }: ControlOf<TextSpec>) {
  const { set } = useForm();
  const words = useWords({ field, path });
  const suggestions = useChoices(field.suggest ?? []);
  const listId = `${words.id}-list`;
  if (field.isLong) {
    return (
      <Field {...words}>
        {(control) => <textarea {...control} rows={3} value={textOf(value)} onChange={(event) => set(path, event.target.value)} className={fieldStyles.input} />}
      </Field>
    );
  }
  return (
    <>
      <TextField
        {...words}
        value={textOf(value)}
        onChange={(next) => set(path, next)}
        input={{ autoComplete: 'off', ...(suggestions.length > 0 ? { list: listId } : {}) }}
      />
      {suggestions.length > 0 ? (
        <datalist id={listId}>
          {suggestions.map((suggestion) => (
            <option key={suggestion.value} value={suggestion.value}>{suggestion.label}</option>
          ))}
        </datalist>
      ) : null}
    </>
  );
}

function ChoiceControl({ field, path, value }: ControlOf<ChoiceSpec>) {
  const { set } = useForm();
  const options = useChoices(field.options);
  const isOpen = field.none === undefined && textOf(value) === '';
  return (
    <SelectField
      {...useWords({ field, path })}
      isOptional={false}
      value={textOf(value)}
      onChange={(next) => set(path, next)}
      options={options}
      none={isOpen ? (options.length === 0 ? 'nothing to choose yet' : 'choose one') : field.none}
    />
  );
}

function PartStateControl({ field, path, value, row }: ControlOf<PartStateSpec>) {
  const { set, partStates } = useForm();
  const partId = isDraftObject(row) ? textOf(row['partId']) : '';
  return (
    <SelectField
      {...useWords({ field, path })}
      isOptional={false}
      value={textOf(value)}
      onChange={(next) => set(path, next)}
      options={partStates[partId] ?? []}
      none={field.none}
    />
  );
}

function ManyChoicesControl({ field, path, value }: ControlOf<ManyChoicesSpec>) {
  const { set } = useForm();
  const options = useChoices(field.options);
  const chosen = isDraftList(value) ? value : [];
  const toggle = (id: string, isChosen: boolean) => set(path, isChosen ? [...chosen, id] : chosen.filter((other) => other !== id));
  return (
    <FieldGroup {...useWords({ field, path })}>
      {options.length === 0 ? <p className={styles.none}>{field.whenNone}</p> : null}
      <div className={fieldStyles.choices}>
        {options.map((option) => (
          <CheckField
            key={option.value}
            id={`${fieldId(path)}-${option.value}`}
            label={option.label}
            value={chosen.includes(option.value)}
            onChange={(isChosen) => toggle(option.value, isChosen)}
          />
        ))}
      </div>
    </FieldGroup>
  );
}

function MomentControl({ field, path, value }: ControlOf<MomentSpec>) {
  const { set, zone } = useForm();
  const words = useWords({ field, path });
  const draft = isDraftObject(value) ? value : {};
  const put = (key: string, next: string) => set(path, { date: textOf(draft['date']), time: textOf(draft['time']), [key]: next });
  return (
    <FieldGroup {...words}>
      <div className={styles.inline}>
        <TextField id={`${words.id}-date`} label="Date" type="date" width="middle" value={textOf(draft['date'])} onChange={(next) => put('date', next)} />
        <TextField
          id={`${words.id}-time`}
          label="Time"
          width="short"
          unit={zone}
          value={textOf(draft['time'])}
          onChange={(next) => put('time', next)}
          input={{ placeholder: '18:30', autoComplete: 'off' }}
        />
      </div>
    </FieldGroup>
  );
}

const POINTS = [['low', 'Smallest'], ['likely', 'Likeliest'], ['high', 'Largest']] as const;

function ThreePointControl({ field, path, value }: ControlOf<ThreePointSpec>) {
  const words = useWords({ field, path });
  const draft = isDraftObject(value) ? value : {};
  return (
    <FieldGroup {...words}>
      <div className={styles.inline}>
        {POINTS.map(([key, label]) => (
          <PointControl key={key} path={[...path, key]} label={label} value={textOf(draft[key])} unit={field.of === 'length' ? undefined : field.of.unit} />
        ))}
      </div>
    </FieldGroup>
  );
}

function PointControl({ path, label, value, unit }: { path: Path; label: string; value: string; unit: string | undefined }) {
  const { set } = useForm();
  return (
    <TextField
      id={fieldId(path)}
      label={label}
      width="short"
      unit={unit}
      value={value}
      onChange={(next) => set(path, next)}
      errors={useErrors(path)}
      input={{ autoComplete: 'off', inputMode: unit === undefined ? 'text' : 'decimal' }}
    />
  );
}

function LinesControl({ field, path, value }: ControlOf<LinesSpec>) {
  const { set } = useForm();
  const text = textOf(value);
  const lines = text.split('\n').map((line) => line.trim());
  const unused = useChoices(field.suggest ?? []).filter((suggestion) => !lines.includes(suggestion.value));
  const add = (line: string) => set(path, text.trim() === '' ? line : `${text.trimEnd()}\n${line}`);
  return (
    <div>
      <Field {...useWords({ field, path })}>
        {(control) => <textarea {...control} rows={3} value={text} onChange={(event) => set(path, event.target.value)} className={fieldStyles.input} />}
      </Field>
      {unused.length > 0 ? (
        <p className={styles.suggestions}>
          {unused.map(({ value: line }) => (
            <Button key={line} look="quiet" onClick={() => add(line)} aria-label={`Add ${line}`}>
              <Plus size={16} aria-hidden />
              {line}
            </Button>
          ))}
        </p>
      ) : null}
    </div>
  );
}

function ShortControl({ field, path, value }: ControlOf<Extract<LeafSpec, { type: 'number' | 'length' | 'time' | 'date' }>>) {
  const { set } = useForm();
  const words = useWords({ field, path });
  const isNumber = field.type === 'number';
  return (
    <TextField
      {...words}
      type={field.type === 'date' ? 'date' : 'text'}
      width={field.type === 'date' ? 'middle' : 'short'}
      unit={isNumber ? field.unit : undefined}
      value={textOf(value)}
      onChange={(next) => set(path, next)}
      input={{
        autoComplete: 'off',
        ...(isNumber ? { inputMode: 'text' } : {}),
        ...(field.type === 'time' ? { placeholder: '18:30' } : {}),
        ...(field.type === 'length' ? { placeholder: '1 h 30' } : {}),
      }}
    />
  );
}

function CheckControl({ field, path, value }: ControlOf<Extract<LeafSpec, { type: 'check' }>>) {
  const { set } = useForm();
  return <CheckField {...useWords({ field, path })} value={value === true} onChange={(next) => set(path, next)} />;
}

/** The control of a single value. */
export function LeafControl({ field, ...rest }: ControlOf<LeafSpec>) {
  switch (field.type) {
    case 'text':
      return <TextControl field={field} {...rest} />;
    case 'choice':
      return <ChoiceControl field={field} {...rest} />;
    case 'choices':
      return <ManyChoicesControl field={field} {...rest} />;
    case 'partState':
      return <PartStateControl field={field} {...rest} />;
    case 'moment':
      return <MomentControl field={field} {...rest} />;
    case 'threePoint':
      return <ThreePointControl field={field} {...rest} />;
    case 'lines':
      return <LinesControl field={field} {...rest} />;
    case 'check':
      return <CheckControl field={field} {...rest} />;
    default:
      return <ShortControl field={field} {...rest} />;
  }
}
