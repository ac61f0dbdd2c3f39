import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { SqlValue, Writer } from '@db/database';

/** What we use of better-sqlite3. */
export interface PeerDatabase {
  exec(sql: string): unknown;
  pragma(source: string): unknown;
  prepare(sql: string): PeerStatement;
  close(): void;
}
export interface PeerStatement {
  run(...values: SqlValue[]): unknown;
  get(...values: SqlValue[]): unknown;
  all(...values: SqlValue[]): unknown[];
}

/** Opens a database with better-sqlite3 out of the folder it was installed in. */
export function openPeer(peerFolder: string, file: string): PeerDatabase {
  const load = createRequire(join(peerFolder, 'package.json'));
  const Peer = load('better-sqlite3') as new (path: string) => PeerDatabase;
  return new Peer(file);
}

/** The peer as our repositories see a database, so that both run the very same statements. */
export function peerWriter(peer: PeerDatabase): Writer {
  const kept = new Map<string, PeerStatement>();
  const prepared = (sql: string): PeerStatement => {
    const statement = kept.get(sql) ?? peer.prepare(sql);
    kept.set(sql, statement);
    return statement;
  };
  return {
    run: (sql, ...values) => void prepared(sql).run(...values),
    get: <Row>(sql: string, ...values: SqlValue[]) => prepared(sql).get(...values) as Row | undefined,
    all: <Row>(sql: string, ...values: SqlValue[]) => prepared(sql).all(...values) as Row[],
  };
}
