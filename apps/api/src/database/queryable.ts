import type { QueryResult, QueryResultRow } from 'pg'

/** A pool, or a client inside a transaction: what a query that only reads asks of either. */
export interface Queryable {
  query<Row extends QueryResultRow>(text: string, values?: unknown[]): Promise<QueryResult<Row>>
}
