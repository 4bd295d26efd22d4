/** SQL by hand, before there is a generated client: for migrations, copies and tests. */

/**
 * @typedef {{ query: (sql: string, args?: string[]) => Promise<Record<string, unknown>[]>, close: () => Promise<void> }} RawDatabase
 */

/**
 * Opens a database on one connection; a file is made when there is none.
 * @param {string} url `file:…` or the address of a server
 * @returns {Promise<RawDatabase>}
 */
export async function openRaw(url) {
  const { PrismaLibSql } = await import('@prisma/adapter-libsql');
  const adapter = await new PrismaLibSql({ url, authToken: process.env.DATABASE_AUTH_TOKEN, timeout: 5000 }).connect();
  return {
    query: async (sql, args = []) => {
      const argTypes = args.map(() => ({ scalarType: /** @type {const} */ ('string'), arity: /** @type {const} */ ('scalar') }));
      const { columnNames, rows } = await adapter.queryRaw({ sql, args, argTypes });
      return rows.map((row) => Object.fromEntries(row.map((value, index) => [columnNames[index], value])));
    },
    close: () => adapter.dispose(),
  };
}
