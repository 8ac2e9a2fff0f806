/**
 * The command line: the only room with a clock, files and a terminal.
 *
 * <p>{@link polewright.app.input} reads what was typed, {@link polewright.app.command} does it, and
 * {@link polewright.app.text} or {@link polewright.app.json} says what came of it.
 */
@NullMarked
package polewright.app;

import org.jspecify.annotations.NullMarked;
