/**
 * One night: its events, and what follows from them.
 *
 * <pre>
 *   JSON Lines ◀──▶ events ──▶ {@link polewright.session.NightState} ──▶ fix, advice
 *                     ▲
 *                     └──▶ log (SQLite, module {@code store})
 * </pre>
 *
 * <p>No computed value is stored as truth: every result is recomputed from the events.
 */
@NullMarked
package polewright.session;

import org.jspecify.annotations.NullMarked;
