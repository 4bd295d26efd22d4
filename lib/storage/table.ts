/** A table of records of one kind, described once and read and written in one way. */
import type { SeriesRecord } from '@/lib/build';
import type { Db } from './connection';

/** Rows of one INSERT. Prisma takes five times as long over one statement of 100 tasks as over four of 25. */
const ROWS_AT_ONCE = 25;

/** Which rows of a series; without ids, all of them. */
export interface RowFilter {
  readonly seriesId: string;
  readonly id?: { in: string[] };
}

/** The part of a Prisma model that every record table shares. */
interface Model<Row> {
  findMany(query: { where: RowFilter; orderBy: ({ position: 'asc' } | { id: 'asc' })[] }): PromiseLike<Row[]>;
  createMany(query: { data: Row[] }): PromiseLike<unknown>;
  updateMany(query: { where: { seriesId: string; id: string }; data: Row }): PromiseLike<unknown>;
  deleteMany(query: { where: RowFilter }): PromiseLike<unknown>;
}

interface RecordRow {
  seriesId: string;
  id: string;
  revision: number;
  position: number;
  name: string;
}

/** Rows of join tables that belong to one record, in their order. */
export type ChildrenOf<Children> = (recordId: string) => Children;

interface TableSpec<Record extends SeriesRecord, Row extends RecordRow, Children> {
  readonly kind: Record['kind'];
  readonly model: (db: Db) => Model<Row>;
  readonly toRow: (record: Record, common: RecordRow) => Row;
  readonly fromRow: (row: Row, children: Children) => Record;
  readonly loadChildren: (db: Db, filter: RowFilter) => Promise<ChildrenOf<Children>>;
  /** Writes the join rows of new records, or of changed ones whose old join rows have been removed. */
  readonly insertChildren: (db: Db, seriesId: string, records: readonly Record[]) => Promise<void>;
  readonly removeChildren: (db: Db, seriesId: string, recordId: string) => Promise<void>;
}

/** What storage does with a kind of record. Errors of the database are thrown. */
export interface Table<Record extends SeriesRecord> {
  readonly kind: Record['kind'];
  /** In their order; with ids, those of them that exist. */
  list(db: Db, seriesId: string, ids?: readonly string[]): Promise<Record[]>;
  insert(db: Db, seriesId: string, records: readonly Record[]): Promise<void>;
  update(db: Db, seriesId: string, record: Record): Promise<void>;
  remove(db: Db, seriesId: string, id: string): Promise<void>;
}

/** A table whose records have join rows. */
export function tableWithChildren<Record extends SeriesRecord, Row extends RecordRow, Children>(
  spec: TableSpec<Record, Row, Children>,
): Table<Record> {
  const makeRow = (record: Record, seriesId: string) => {
    const { id, revision, order: position, name } = record;
    return spec.toRow(record, { seriesId, id, revision, position, name });
  };
  return {
    kind: spec.kind,
    list: async (db, seriesId, ids) => {
      const where = ids ? { seriesId, id: { in: [...ids] } } : { seriesId };
      const rows = await spec.model(db).findMany({ where, orderBy: [{ position: 'asc' }, { id: 'asc' }] });
      if (rows.length === 0) return [];
      const childrenOf = await spec.loadChildren(db, where);
      return rows.map((row) => spec.fromRow(row, childrenOf(row.id)));
    },
    insert: async (db, seriesId, records) => {
      const rows = records.map((record) => makeRow(record, seriesId));
      for (let first = 0; first < rows.length; first += ROWS_AT_ONCE) {
        await spec.model(db).createMany({ data: rows.slice(first, first + ROWS_AT_ONCE) });
      }
      await spec.insertChildren(db, seriesId, records);
    },
    update: async (db, seriesId, record) => {
      await spec.model(db).updateMany({ where: { seriesId, id: record.id }, data: makeRow(record, seriesId) });
      await spec.removeChildren(db, seriesId, record.id);
      await spec.insertChildren(db, seriesId, [record]);
    },
    remove: async (db, seriesId, id) => {
      await spec.model(db).deleteMany({ where: { seriesId, id: { in: [id] } } });
    },
  };
}

type PlainSpec<Record extends SeriesRecord, Row extends RecordRow> = Pick<TableSpec<Record, Row, null>, 'kind' | 'model' | 'toRow' | 'fromRow'>;

/** A table whose records are one row each. */
export function plainTable<Record extends SeriesRecord, Row extends RecordRow>(spec: PlainSpec<Record, Row>): Table<Record> {
  return tableWithChildren({
    ...spec,
    loadChildren: async () => () => null,
    insertChildren: async () => {},
    removeChildren: async () => {},
  });
}

/** Groups join rows, already in order, by the record they belong to. */
export function groupRows<Row, Value>(rows: readonly Row[], ownerOf: (row: Row) => string, valueOf: (row: Row) => Value): ChildrenOf<readonly Value[]> {
  const groups = new Map<string, Value[]>();
  for (const row of rows) {
    const owner = ownerOf(row);
    const group = groups.get(owner);
    if (group) group.push(valueOf(row));
    else groups.set(owner, [valueOf(row)]);
  }
  return (owner) => groups.get(owner) ?? [];
}
