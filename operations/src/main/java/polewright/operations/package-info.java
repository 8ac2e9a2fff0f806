/**
 * The command line: the only room with a clock, files and a terminal.
 *
 * <p>{@link polewright.operations.input} reads what was typed, {@link polewright.cli} does it, and
 * {@link polewright.report.text} or {@link polewright.report.json} says what came of it.
 */
@NullMarked
package polewright.operations;

import org.jspecify.annotations.NullMarked;
