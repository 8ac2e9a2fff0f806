/**
 * What advice is worth: nights that begin alike, played once with it and once without.
 *
 * <pre>
 *   seed ──▶ WorkNight ──┬─▶ RehearsedNight ──┬─▶ PlayedNight: minutes, adjustments, where it ended
 *            (user, site, └─▶ PlainRoutine ───┘         └─▶ NightsByWork: tables, criteria
 *             rig, work)
 * </pre>
 */
@NullMarked
package polewright.bench.nights;

import org.jspecify.annotations.NullMarked;
