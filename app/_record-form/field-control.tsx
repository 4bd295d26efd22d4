'use client';

import { useEffect, useRef } from 'react';
import { ArrowDown, ArrowUp, Plus, Trash2 } from 'lucide-react';
import { Button, FieldGroup } from '@/app/_ui';
import type { FieldSpec, GroupSpec, ListSpec } from '@/lib/views';
import { useErrors, useForm } from './form-context';
import { emptyItem, fieldId, isDraftList, isDraftObject } from './form-paths';
import { LeafControl, type ControlOf } from './leaf-controls';
import styles from './record-form.module.css';

/** The control of any field: a single value, a group or a list. */
export function FieldControl({ field, ...rest }: ControlOf<FieldSpec>) {
  if (field.type === 'group') return <GroupControl field={field} {...rest} />;
  if (field.type === 'list') return <ListControl field={field} {...rest} />;
  return <LeafControl field={field} {...rest} />;
}

function GroupControl({ field, path, value }: ControlOf<GroupSpec>) {
  return (
    <FieldGroup id={fieldId(path)} label={field.label} help={field.help} errors={useErrors(path)}>
      <div className={styles.grid}>
        {field.fields.map((inner) => (
          <FieldControl key={inner.name} field={inner} path={[...path, inner.name]} value={isDraftObject(value) ? value[inner.name] : undefined} />
        ))}
      </div>
    </FieldGroup>
  );
}

function capitalise(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A list of items that can be added, taken out and moved, each with its own fields. */
function ListControl({ field, path, value }: ControlOf<ListSpec>) {
  const { set } = useForm();
  const id = fieldId(path);
  const items = isDraftList(value) ? value : [];
  // What to put the focus on once the list has been drawn again.
  const focusNext = useRef<string | null>(null);
  useEffect(() => {
    if (focusNext.current === null) return;
    const target = document.querySelector<HTMLElement>(focusNext.current);
    focusNext.current = null;
    target?.focus();
  });

  const add = () => {
    focusNext.current = `[data-item="${id}-${items.length}"] :is(input, select, textarea)`;
    set(path, [...items, emptyItem(field.fields)]);
  };
  const remove = (index: number) => {
    focusNext.current = `#${CSS.escape(`${id}-add`)}`;
    set(path, items.filter((_, other) => other !== index));
  };
  const move = (index: number, by: -1 | 1) => {
    const target = index + by;
    const moved = items[index];
    if (moved === undefined || target < 0 || target >= items.length) return;
    focusNext.current = `[data-item="${id}-${target}"] [data-move="${by}"]`;
    const rest = items.filter((_, other) => other !== index);
    set(path, [...rest.slice(0, target), moved, ...rest.slice(target)]);
  };

  return (
    <FieldGroup id={id} label={field.label} help={field.help} isOptional={field.isOptional} errors={useErrors(path)}>
      {items.length === 0 ? <p className={styles.none}>{field.whenNone}</p> : null}
      <ol className={styles.items}>
        {items.map((item, index) => {
          const name = `${field.item} ${index + 1}`;
          return (
            // Items have no identity before they are saved; every control is controlled, so the place will do.
            <li key={`${id}-${index}`} data-item={`${id}-${index}`} className={styles.item}>
              <fieldset className={styles.itemFields}>
                <legend className={styles.itemName}>{capitalise(name)}</legend>
                <div className={styles.grid}>
                  {field.fields.map((inner) => (
                    <FieldControl
                      key={inner.name}
                      field={inner}
                      path={[...path, index, inner.name]}
                      value={isDraftObject(item) ? item[inner.name] : undefined}
                      row={item}
                    />
                  ))}
                </div>
              </fieldset>
              <div className={styles.itemButtons}>
                {items.length > 1 ? (
                  <>
                    <Button look="quiet" data-move="-1" onClick={() => move(index, -1)} aria-label={`Move ${name} up`} aria-disabled={index === 0}>
                      <ArrowUp size={18} aria-hidden />
                    </Button>
                    <Button look="quiet" data-move="1" onClick={() => move(index, 1)} aria-label={`Move ${name} down`} aria-disabled={index === items.length - 1}>
                      <ArrowDown size={18} aria-hidden />
                    </Button>
                  </>
                ) : null}
                <Button look="quiet" onClick={() => remove(index)} aria-label={`Take out ${name}`}>
                  <Trash2 size={18} aria-hidden />
                </Button>
              </div>
            </li>
          );
        })}
      </ol>
      <div>
        <Button id={`${id}-add`} onClick={add}>
          <Plus size={18} aria-hidden />
          Add {field.item}
        </Button>
      </div>
    </FieldGroup>
  );
}
