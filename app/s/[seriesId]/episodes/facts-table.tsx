import type { ReactNode } from 'react';
import styles from './episodes.module.css';

interface FactsTableProps {
  /** Read out before it. */
  readonly label: string;
  readonly columns: readonly string[];
  /** The first cell names its row. */
  readonly rows: readonly { readonly key: string; readonly cells: readonly ReactNode[] }[];
}

/** A table that becomes a list of facts on a narrow screen, so that nothing has to be scrolled sideways. */
export function FactsTable({ label, columns, rows }: FactsTableProps) {
  return (
    <table className={styles.table}>
      <caption className="visually-hidden">{label}</caption>
      <thead>
        <tr>{columns.map((column) => <th key={column} scope="col">{column}</th>)}</tr>
      </thead>
      <tbody>
        {rows.map(({ key, cells: [name, ...cells] }) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            {cells.map((cell, index) => <td key={columns[index + 1]} data-column={columns[index + 1]}>{cell}</td>)}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
