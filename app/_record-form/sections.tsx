'use client';

import { useState } from 'react';
import type { Issue } from '@/lib/result';
import type { DraftObject, FormSection } from '@/lib/views';
import { FieldControl } from './field-control';
import styles from './record-form.module.css';

interface SectionsProps {
  readonly sections: readonly FormSection[];
  readonly draft: DraftObject;
  readonly issues: readonly Issue[];
}

/** The fields of a form under their headings. */
export function Sections({ sections, draft, issues }: SectionsProps) {
  return sections.map((section) => (
    <Section
      key={section.title}
      section={section}
      draft={draft}
      hasIssues={section.fields.some(({ name }) => issues.some((found) => found.path[0] === name))}
    />
  ));
}

interface SectionProps {
  readonly section: FormSection;
  readonly draft: DraftObject;
  readonly hasIssues: boolean;
}

function Section({ section, draft, hasIssues }: SectionProps) {
  const [isOpen, setOpen] = useState(false);
  const body = (
    <>
      {section.help ? <p className={styles.sectionHelp}>{section.help}</p> : null}
      <div className={styles.fields}>
        {section.fields.map((field) => (
          <FieldControl key={field.name} field={field} path={[field.name]} value={draft[field.name]} />
        ))}
      </div>
    </>
  );
  if (!section.isRare) {
    return (
      <section className={styles.section}>
        <h2 className={styles.sectionTitle}>{section.title}</h2>
        {body}
      </section>
    );
  }
  return (
    <details className={styles.section} open={isOpen || hasIssues} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={styles.fold}>{section.title}</summary>
      {body}
    </details>
  );
}
