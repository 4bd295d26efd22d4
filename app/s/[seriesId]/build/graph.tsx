import type { GraphArc, GraphNode, WorkGraph } from '@/lib/views';
import { RecordLink } from '../week/record-link';
import styles from './graph.module.css';

interface GraphProps {
  readonly graph: WorkGraph;
  readonly seriesId: string;
}

/** Mean width of a letter in a label, px. */
const LETTER = 5.7;

/** Work as plates in columns, joined by their order; waits carry their words. The list below says the same. */
export function Graph({ graph, seriesId, name }: GraphProps & { readonly name: string }) {
  return (
    <section className={styles.scroll} aria-label={`Graph of work, ${name}`}>
      <svg width={graph.width} height={graph.height} viewBox={`0 0 ${graph.width} ${graph.height}`} className={styles.graph}>
        <defs>
          <marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="8" markerHeight="8" orient="auto">
            <path d="M0 0.8 L7 4 L0 7.2" className={styles.tip} />
          </marker>
        </defs>
        <g aria-hidden>
          {graph.arcs.map((arc) => (
            <path key={arc.key} d={arc.path} className={arc.isWait ? styles.wait : styles.arc} markerEnd="url(#tip)" />
          ))}
          {graph.arcs.filter((arc) => arc.label !== '').map((arc) => (
            <Label key={arc.key} arc={arc} />
          ))}
        </g>
        {graph.nodes.map((node) => (
          <Node key={node.key} node={node} size={graph.node} seriesId={seriesId} />
        ))}
      </svg>
    </section>
  );
}

function Label({ arc }: { readonly arc: GraphArc }) {
  const width = arc.label.length * LETTER + 10;
  return (
    <g transform={`translate(${arc.labelX} ${arc.labelY})`}>
      <rect x={-width / 2} y={-9} width={width} height={18} rx={2} className={styles.labelPlate} />
      <text textAnchor="middle" dy="0.34em" className={styles.label}>
        {arc.label}
      </text>
    </g>
  );
}

function Node({ node, size, seriesId }: { readonly node: GraphNode; readonly size: WorkGraph['node']; readonly seriesId: string }) {
  return (
    <foreignObject x={node.x} y={node.y} width={size.width} height={size.height}>
      <RecordLink seriesId={seriesId} to={node.work} className={`${styles.node} ${styles[node.sort]} ${node.isDone ? styles.done : ''}`}>
        <span className={styles.title}>{node.title}</span>
        <span className={styles.when}>
          {node.sort === 'away' ? 'away · ' : ''}
          {node.isIrreversible ? 'once only · ' : ''}
          {node.when}
        </span>
      </RecordLink>
    </foreignObject>
  );
}

/** The same order as a list: what each piece of work waits for. */
export function GraphList({ graph, seriesId }: GraphProps) {
  return (
    <details className={styles.fold}>
      <summary>The same order as a list</summary>
      <ol className={`plain ${styles.list}`}>
        {graph.nodes.map((node) => (
          <li key={node.key}>
            <RecordLink seriesId={seriesId} to={node.work}>{node.title}</RecordLink> <span className={styles.soft}>{node.when}</span>
            {node.after.length > 0 ? (
              <ul>
                {node.after.map((one) => (
                  <li key={one.key}>
                    after {one.title} <span className={styles.soft}>({one.why})</span>
                  </li>
                ))}
              </ul>
            ) : (
              <span className={styles.soft}> · waits for nothing here</span>
            )}
          </li>
        ))}
      </ol>
    </details>
  );
}
