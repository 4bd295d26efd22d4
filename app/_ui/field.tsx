import type { HTMLInputTypeAttribute, InputHTMLAttributes, ReactNode } from 'react';
import { OctagonX } from 'lucide-react';
import styles from './field.module.css';

/** What a control needs to be tied to its label, help and errors. */
export interface ControlProps {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': boolean | undefined;
}

interface FieldWords {
  readonly id: string;
  readonly label: string;
  readonly help?: string | undefined;
  /** Sentences, each saying what is wrong and one fix. */
  readonly errors?: readonly string[] | undefined;
  /** Says so beside the label. */
  readonly isOptional?: boolean | undefined;
}

interface FieldProps extends FieldWords {
  readonly children: (control: ControlProps) => ReactNode;
}

function describe({ id, help, errors = [] }: FieldWords): ControlProps {
  const described = [help ? `${id}-help` : null, errors.length > 0 ? `${id}-error` : null].filter((part) => part !== null);
  return {
    id,
    'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
    'aria-invalid': errors.length > 0 ? true : undefined,
  };
}

/** A label, its control, help and errors, tied together. The control is given by `children`. */
export function Field({ children, ...words }: FieldProps) {
  const { id, label, help, errors = [], isOptional } = words;
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
        {isOptional ? <span className={styles.optional}> (optional)</span> : null}
      </label>
      {help ? <FieldHelp id={id}>{help}</FieldHelp> : null}
      {children(describe(words))}
      <FieldErrors id={id} errors={errors} />
    </div>
  );
}

/** The same for a group of controls: a fieldset with its legend. `id` takes the focus when an error links to it. */
export function FieldGroup({ children, ...words }: Omit<FieldProps, 'children'> & { readonly children: ReactNode }) {
  const { id, label, help, errors = [], isOptional } = words;
  const control = describe(words);
  return (
    <fieldset id={id} tabIndex={-1} className={styles.field} aria-describedby={control['aria-describedby']}>
      <legend className={styles.label}>
        {label}
        {isOptional ? <span className={styles.optional}> (optional)</span> : null}
      </legend>
      {help ? <FieldHelp id={id}>{help}</FieldHelp> : null}
      {children}
      <FieldErrors id={id} errors={errors} />
    </fieldset>
  );
}

function FieldHelp({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  return (
    <p id={`${id}-help`} className={styles.help}>
      {children}
    </p>
  );
}

export function FieldErrors({ id, errors }: { readonly id: string; readonly errors: readonly string[] }) {
  if (errors.length === 0) return null;
  return (
    <div id={`${id}-error`}>
      {errors.map((error) => (
        <p key={error} className={styles.error}>
          <OctagonX size={18} aria-hidden />
          <span>{error}</span>
        </p>
      ))}
    </div>
  );
}

interface TextFieldProps extends FieldWords {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: HTMLInputTypeAttribute;
  /** Printed after the control: `min`, `°C`, `%`. */
  readonly unit?: string | undefined;
  readonly width?: 'full' | 'middle' | 'short';
  readonly input?: Omit<InputHTMLAttributes<HTMLInputElement>, 'value' | 'onChange' | 'type' | 'id'>;
}

/** One line to type in. Numbers are kept as typed, so that nothing typed is lost. */
export function TextField({ value, onChange, type = 'text', unit, width = 'full', input, ...words }: TextFieldProps) {
  const wide = width === 'full' ? '' : ` ${styles[width]}`;
  return (
    <Field {...words}>
      {(control) => (
        <span className={styles.row}>
          <input {...input} {...control} type={type} value={value} onChange={(event) => onChange(event.target.value)} className={`${styles.input}${wide}`} />
          {unit ? <span className={styles.unit}>{unit}</span> : null}
        </span>
      )}
    </Field>
  );
}

export interface Option {
  readonly value: string;
  readonly label: string;
}

interface SelectFieldProps extends FieldWords {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly options: readonly Option[];
  /** Label of the empty choice; left out, there is none. */
  readonly none?: string | undefined;
}

export function SelectField({ value, onChange, options, none, ...words }: SelectFieldProps) {
  return (
    <Field {...words}>
      {(control) => (
        <select {...control} value={value} onChange={(event) => onChange(event.target.value)} className={`${styles.input} ${styles.middle}`}>
          {none === undefined ? null : <option value="">{none}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

interface CheckFieldProps extends FieldWords {
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** One box to tick, the label beside it. */
export function CheckField({ value, onChange, ...words }: CheckFieldProps) {
  const control = describe(words);
  return (
    <div className={styles.field}>
      <label className={styles.check}>
        <input {...control} type="checkbox" checked={value} onChange={(event) => onChange(event.target.checked)} />
        <span>
          {words.label}
          {words.help ? (
            <>
              <br />
              <span id={`${words.id}-help`} className={styles.help}>
                {words.help}
              </span>
            </>
          ) : null}
        </span>
      </label>
      <FieldErrors id={words.id} errors={words.errors ?? []} />
    </div>
  );
}
