/**
 * The named values by which a measurement is written to a log and read back: angles and durations with their unit in
 * the name, to the last bit. Knows nothing of JSON itself; {@code session} turns values into text and text into values.
 */
@NullMarked
package polewright.sky.fields;

import org.jspecify.annotations.NullMarked;
