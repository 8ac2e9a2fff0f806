/**
 * One night: its events, and what follows from them.
 *
 * <pre>
 *   JSON Lines ◀──▶ events ──▶ {@link polewright.session.NightState} ──▶ fix, advice
 *                     ▲
 *                     └──▶ log (SQLite, module {@code store})
 * </pre>
 *
 * <p>Nothing computed is stored as truth: every result is computed again from the events.
 */
@NullMarked
package polewright.session;

import org.jspecify.annotations.NullMarked;
