/**
 * What a person can do, as one table. Options of the terminal, fields of the pages, sketches and help come from it.
 *
 * <pre>
 *   Action ── its Arguments ──▶ options (cli), fields (web)
 *   typed ──Argument.type──▶ Entries ──Action.entering──▶ events ──NightEntry──▶ log
 * </pre>
 */
@NullMarked
package polewright.operations.action;

import org.jspecify.annotations.NullMarked;
