/** The nights of the log, read for the comparison over seasons. */
@NullMarked
package polewright.operations.seasons;

import org.jspecify.annotations.NullMarked;
