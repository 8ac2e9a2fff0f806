/**
 * What Polewright does for its two faces, the terminal and the pages: it appends events to the log, reads frames, folders
 * and typed values, and runs practice. With {@code cli}, {@code web} and {@code launcher} it is where clock, files and
 * sockets are used; everything it calls below, apart from {@code store}, is pure.
 *
 * <p>{@link polewright.operations.input} reads what was typed; {@code polewright.report} words what came of it.
 */
@NullMarked
package polewright.operations;

import org.jspecify.annotations.NullMarked;
