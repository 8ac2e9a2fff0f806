/** Parses typed values; an invalid value is refused in one line. */
@NullMarked
package polewright.operations.input;

import org.jspecify.annotations.NullMarked;
