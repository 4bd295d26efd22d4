/**
 * Prisma's schema engine as WebAssembly: it writes and applies migrations without the engine binary
 * that the Prisma command line would download. Loaded only when there is something to do.
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';

/** The full text of the log is a virtual table written by hand in its migration; SQLite keeps its own tables behind it. */
export const TABLE_FILTERS = {
  externalTables: ['LogSearch', 'LogSearch_data', 'LogSearch_idx', 'LogSearch_docsize', 'LogSearch_config'],
  externalEnums: [],
};

/**
 * @param {string} url database to work on
 * @param {string} root folder of the project
 * @returns {Promise<import('@prisma/schema-engine-wasm').SchemaEngine>}
 */
export async function openSchemaEngine(url, root) {
  const { bindMigrationAwareSqlAdapterFactory } = await import('@prisma/driver-adapter-utils');
  const { PrismaLibSql } = await import('@prisma/adapter-libsql');
  const { SchemaEngine } = await (program ??= loadProgram());
  const factory = new PrismaLibSql({ url, authToken: process.env.DATABASE_AUTH_TOKEN });
  const connectToShadow = factory.connectToShadowDb.bind(factory);
  factory.connectToShadowDb = async () => runWholeScripts(await connectToShadow());
  const adapter = bindMigrationAwareSqlAdapterFactory(factory);
  return SchemaEngine.new({ datamodels: [await readSchema(root)] }, () => {}, adapter);
}

/**
 * The loaded program: once per process, for it keeps state of its own.
 * @type {ReturnType<typeof loadProgram> | undefined}
 */
let program;

async function loadProgram() {
  const background = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  // Where the engine leaves the reason when it breaks off; without it that reason is lost.
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      /** @param {string} message */
      set_message(message) {
        throw new Error(`The schema engine broke off: ${message}`);
      },
    },
  });
  const script = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = await readFile(script.replace(/\.js$/, '.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': background });
  const { __wbg_set_wasm: handOver } = background;
  const { __wbindgen_start: start } = instance.exports;
  handOver(instance.exports);
  if (typeof start !== 'function') throw new Error('The schema engine has no start function: its version does not fit.');
  start();
  return background;
}

/**
 * On the shadow database the engine sends a whole migration as one statement, and libsql would run
 * the first statement of it only. So everything without arguments is run as a script.
 * @template {import('@prisma/driver-adapter-utils').SqlDriverAdapter} Adapter
 * @param {Adapter} adapter
 * @returns {Adapter}
 */
function runWholeScripts(adapter) {
  const executeRaw = adapter.executeRaw.bind(adapter);
  adapter.executeRaw = async (query) => {
    if (query.args.length > 0) return executeRaw(query);
    await adapter.executeScript(query.sql);
    return 0;
  };
  return adapter;
}

/**
 * Path and text of the Prisma schema.
 * @param {string} root
 * @returns {Promise<[string, string]>}
 */
export async function readSchema(root) {
  const file = path.join(root, 'prisma', 'schema.prisma');
  return [file, await readFile(file, 'utf8')];
}
