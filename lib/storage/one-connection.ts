/**
 * The libsql adapter, kept to one connection. As it comes, each transaction takes the client's
 * connection with it and the next query opens another: settings made by PRAGMA are lost, and the old
 * connections keep their file handles until the garbage collector comes by (two handles a
 * transaction, so a thousand-handle limit is met after some 500 transactions).
 */
import { PrismaLibSql } from '@prisma/adapter-libsql';

type LibSqlClient = ReturnType<PrismaLibSql['createClient']>;
type LibSqlConfig = Parameters<PrismaLibSql['createClient']>[0];
type LibSqlTransaction = Awaited<ReturnType<LibSqlClient['transaction']>>;

/** For database files only; a server hands out its own sessions. */
export class OneConnectionLibSql extends PrismaLibSql {
  override createClient(config: LibSqlConfig): LibSqlClient {
    const client = super.createClient(config);
    client.transaction = async () => beginTransaction(client);
    return client;
  }
}

/** The adapter holds its lock from begin to commit or rollback, so nothing else comes between on this connection. */
async function beginTransaction(client: LibSqlClient): Promise<LibSqlTransaction> {
  await client.execute('BEGIN DEFERRED');
  let isOpen = true;
  const end = async (sql: 'COMMIT' | 'ROLLBACK') => {
    await client.execute(sql);
    isOpen = false;
  };
  return {
    execute: (statement) => client.execute(statement),
    batch: async (statements) => {
      const results = [];
      for (const statement of statements) results.push(await client.execute(statement));
      return results;
    },
    executeMultiple: (sql) => client.executeMultiple(sql),
    commit: () => end('COMMIT'),
    rollback: () => end('ROLLBACK'),
    close: () => {
      if (isOpen) void end('ROLLBACK');
    },
    get closed() {
      return !isOpen;
    },
  };
}
