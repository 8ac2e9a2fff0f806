/**
 * The benefit of the advice: identical nights, played once with it and once without.
 * <pre>
 *   seed ──▶ WorkNight ──┬─▶ RehearsedNight ──┬─▶ PlayedNight: minutes, adjustments, where it ended
 *            (user, site, └─▶ PlainRoutine ───┘         └─▶ NightsByWork: tables, criteria
 *             rig, work)
 * </pre>
 */
@NullMarked
package polewright.bench.nights;

import org.jspecify.annotations.NullMarked;
