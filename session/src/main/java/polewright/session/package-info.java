/**
 * One night's work: the events, the log that keeps them, and what follows from them.
 *
 * <pre>
 *   event ──▶ log (SQLite) ──▶ events ──▶ {@link polewright.session.NightState} ──▶ fix, advice
 *                 ▲   │
 *      JSON Lines ┘   └▶ JSON Lines
 * </pre>
 *
 * <p>Nothing computed is stored as truth: whatever is shown is worked out again from the events.
 */
@NullMarked
package polewright.session;

import org.jspecify.annotations.NullMarked;
